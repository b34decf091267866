import type { FastifyInstance, FastifyReply } from 'fastify';
import { OfficeSaid, type OfficesView } from '../../shared/farm.ts';
import type { House } from '../house.ts';
import { HubRefused } from '../sync/line.ts';

const BODY_LIMIT = 1024;

/**
 * The offices that read this farm at its hub. They are the hub's to tell and to keep: nothing of them is written here, so what
 * is said to one is no intent, and is done once the hub says so.
 */
export function addFarmRoutes(app: FastifyInstance, { barn }: House): void {
  async function asked(reply: FastifyReply, say: OfficeSaid | null): Promise<OfficesView | FastifyReply> {
    reply.header('cache-control', 'no-store');
    try {
      return await barn.context.farm.offices(say);
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      return reply.code(error instanceof HubRefused ? 409 : 502).send({ message });
    }
  }

  app.get('/api/farm/offices', async (_, reply) => asked(reply, null));
  app.post('/api/farm/offices', { bodyLimit: BODY_LIMIT }, async ({ body }, reply) => {
    const say = OfficeSaid.safeParse(body);
    if (!say.success) return reply.code(400).send({ message: 'an office, and whether it reads this farm' });
    return asked(reply, say.data);
  });
}
