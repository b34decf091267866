import type { FastifyInstance, FastifyReply } from 'fastify';
import { z } from 'zod';
import { type DeviceKind, type LetIn, Pin, type SessionView } from '../../shared/network.ts';
import { refusal } from '../barn/barn.ts';
import type { House } from '../house.ts';
import { COOKIE } from '../network/arrival.ts';

/** A code or a PIN is short; what is longer is none. */
const BODY_LIMIT = 1024;
/** Browsers keep a cookie for 400 days at most (RFC 6265bis). */
const COOKIE_SECONDS = 400 * 24 * 3600;

const Code = z.strictObject({ code: z.string().regex(/^\d{8}$/) });
const SignIn = z.strictObject({ person: z.string().max(24), pin: Pin });
const NewPin = z.strictObject({ pin: Pin });

/**
 * What of the network is secret, and so is no intent: intents are remembered by a hash, which tells a short number to
 * whoever has the file.
 */
export function addNetworkRoutes(app: FastifyInstance, { network, barn, standing, log }: House): void {
  app.addHook('onListen', async () => {
    if (standing.problem === null) await network.serve(app);
  });
  app.addHook('preClose', () => network.stop());

  app.get('/api/network/pairing', async (_, reply) => {
    reply.header('cache-control', 'no-store').type('application/json');
    // "null" where no pairing is open: that one just ended is no fault of the page that asks.
    return JSON.stringify(network.pairingCode());
  });
  app.get('/api/session', async ({ visitor }, reply): Promise<SessionView> => {
    reply.header('cache-control', 'no-store');
    if (visitor.kind !== 'device') return { kind: visitor.kind };
    return { kind: 'device', right: visitor.right, person: visitor.person };
  });
  app.post('/api/pair', { bodyLimit: BODY_LIMIT }, async (request, reply) => {
    const asked = Code.safeParse(request.body);
    // A token that could be read on the way would be no secret from the first moment.
    if (!network.originOf(request).secret) return answer(reply, no('no-pairing'));
    if (!asked.success) return answer(reply, no('wrong'));
    try {
      const letIn = network.letIn(asked.data.code, kindOf(request.headers['user-agent'] ?? ''));
      if (!('token' in letIn)) return answer(reply, letIn);
      reply.header(
        'set-cookie',
        `${COOKIE}=${letIn.token}; Path=/; Max-Age=${COOKIE_SECONDS}; HttpOnly; Secure; SameSite=Strict`,
      );
      return answer(reply, { ok: true });
    } catch (error) {
      log('a paired device could not be kept', error);
      return reply.code(507).send(refusal(null, 'not-written', barn.context.memory.settings));
    }
  });
  app.post('/api/session', { bodyLimit: BODY_LIMIT }, async ({ visitor, body }, reply) => {
    const asked = SignIn.safeParse(body);
    if (visitor.kind !== 'device' || !asked.success) return answer(reply, no('not-a-pin'));
    return answer(reply, await network.signIn(visitor, asked.data.person, asked.data.pin));
  });
  app.delete('/api/session', async ({ visitor }, reply) => {
    if (visitor.kind === 'device') network.signOut(visitor);
    return answer(reply, { ok: true });
  });
  app.post<{ Params: { person: string } }>(
    '/api/pins/:person',
    { bodyLimit: BODY_LIMIT },
    async ({ params, body }, reply) => {
      const asked = NewPin.safeParse(body);
      if (!asked.success) return answer(reply, no('not-a-pin'));
      try {
        return answer(reply, await network.setPin(params.person, asked.data.pin));
      } catch (error) {
        log('a PIN could not be kept', error);
        return reply.code(507).send(refusal(null, 'not-written', barn.context.memory.settings));
      }
    },
  );
}

function no(why: Extract<LetIn, { ok: false }>['why']): LetIn {
  return { ok: false, why, waitSeconds: 0 };
}

function answer(reply: FastifyReply, letIn: LetIn): FastifyReply {
  return reply
    .code(letIn.ok ? 200 : 403)
    .header('cache-control', 'no-store')
    .send(letIn);
}

/** What a browser says it runs on; it only makes the name of the device. */
function kindOf(agent: string): DeviceKind {
  if (/iPad|Tablet|Android(?!.*Mobile)/i.test(agent)) return 'tablet';
  return /Mobi|iPhone/i.test(agent) ? 'phone' : 'computer';
}
