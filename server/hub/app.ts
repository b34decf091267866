import fastify, {
  type FastifyError,
  type FastifyInstance,
  type FastifyReply,
  type FastifyRequest,
} from 'fastify';
import type { z } from 'zod';
import { type Admitted, admit, type Claim, claimIn, kiosksNow, NotLetIn } from './credentials.ts';
import type { FarmClient, HubDatabase } from './database.ts';
import { Doorkeeper } from './doorkeeper.ts';
import type { FarmCopies } from './farm-copies.ts';
import { idAt, NotYourLife, pullEvents, pushEvents } from './herd-log.ts';
import { News } from './news.ts';
import { officesOf, sayOffice } from './office-grants.ts';
import { addOfficeRoutes } from './office-routes.ts';
import { IdBody, MOST_BYTES, OfficesBody, PullBody, PushBody, type RefusedReply } from './wire.ts';

/** What the hub is served with. */
export interface HubAppOptions {
  readonly database: HubDatabase;
  /** Certificate and key as PEM; `null` serves in the clear. */
  readonly tls: { readonly cert: string; readonly key: string } | null;
  /** The records of farms for the office. */
  readonly copies: FarmCopies;
  readonly log: (message: string, error: unknown) => void;
}

const SHUT_OUT = {
  'unknown-kiosk': 'This hub does not know the kiosk. Write a new invitation for it at the hub.',
  revoked: 'This kiosk was shut out at the hub. Write a new invitation for it at the hub.',
} as const;

const TOO_OFTEN = 'Too many requests. Wait a few seconds.';

/** Builds the hub's web server, without listening. */
export function buildHubApp({ database, tls, copies, log }: HubAppOptions): FastifyInstance {
  const base = { bodyLimit: MOST_BYTES, forceCloseConnections: true, logger: false } as const;
  const app = (tls === null ? fastify(base) : fastify({ ...base, https: tls })) as unknown as FastifyInstance;
  const news = new News();
  const doorkeeper = new Doorkeeper();
  app.addHook('preClose', async () => news.end());
  app.setErrorHandler((error: FastifyError, request, reply) => {
    if (error instanceof NotYourLife) return refuse(reply, 403, 'bad-input', `${error.message}.`);
    if (error instanceof NoSuchOffice)
      return refuse(reply, 404, 'no-such-office', 'No such office asks to read this farm.');
    if (error instanceof NotLetIn) {
      doorkeeper.turnedAway(request.ip);
      return refuse(reply, 401, error.why, SHUT_OUT[error.why]);
    }
    const status = error.statusCode ?? 500;
    if (status === 413) return refuse(reply, 413, 'too-large', 'More was sent at once than is taken.');
    if (status < 500) return refuse(reply, status, 'bad-input', error.message);
    log('a request failed', error);
    return refuse(reply, 500, 'failed', 'Something went wrong at the hub; its log says what.');
  });

  addOfficeRoutes(app, { database, copies, doorkeeper, secure: tls !== null });
  app.get('/v1/health', async () => ({ ok: true }));

  /** A route for kiosks: what is asked is of its form, by somebody who says who it is, and not too often. */
  function forKiosks<B>(
    url: string,
    form: z.ZodType<B>,
    answer: (claim: Claim, body: B) => Promise<unknown>,
  ): void {
    app.post(url, async (request: FastifyRequest, reply) => {
      const claim = claimIn(request.headers.authorization);
      if (!doorkeeper.mayAsk(request.ip, claim)) return refuse(reply, 429, 'too-often', TOO_OFTEN);
      if (claim === null) throw new NotLetIn('unknown-kiosk');
      const parsed = form.safeParse(request.body);
      if (!parsed.success) {
        const [issue] = parsed.error.issues;
        return refuse(reply, 400, 'bad-input', `${issue?.path.join('.')}: ${issue?.message}`);
      }
      return answer(claim, parsed.data);
    });
  }

  /** Does something with a farm's rows, all or nothing, for a kiosk that is let in there. */
  const admitted = <T>(
    claim: Claim,
    work: (client: FarmClient, caller: Admitted) => Promise<T>,
  ): Promise<T> =>
    database.asFarm(claim.farm, async (client) => {
      const caller = await admit(client, claim);
      doorkeeper.letIn(claim);
      return work(client, caller);
    });

  forKiosks('/v1/push', PushBody, async (claim, batch) => {
    const answer = await admitted(claim, (client, { farm, credential }) =>
      pushEvents(client, farm, credential, batch),
    );
    if (answer.ok) news.tell(claim.farm);
    return answer;
  });

  forKiosks('/v1/pull', PullBody, async (claim, { kiosk, have, waitMs }) => {
    const known = new Map(Object.entries(have));
    const look = () =>
      admitted(claim, async (client, caller) => ({
        pulled: await pullEvents(client, caller.farm, known),
        kiosks: await kiosksNow(client, caller, kiosk),
      }));
    // Listens before it looks: what comes between the two is not missed.
    const next = news.wait(claim.farm, waitMs);
    let found = await look();
    if (found.pulled.events.length === 0 && found.pulled.parted.length === 0 && waitMs > 0) {
      await next;
      found = await look();
    }
    const { events, heads, parted } = found.pulled;
    return { events, heads: Object.fromEntries(heads), parted, kiosks: found.kiosks };
  });

  forKiosks('/v1/id', IdBody, async (claim, { life, sequence }) => ({
    id: await admitted(claim, (client, { farm }) => idAt(client, farm, life, sequence)),
  }));

  forKiosks('/v1/offices', OfficesBody, async (claim, { say }) =>
    admitted(claim, async (client, caller) => {
      const changed = say === null || (await sayOffice(client, caller, say.office, say.reads));
      const offices = await officesOf(client, caller.farm);
      // What was so already is no mistake.
      if (!changed && !offices.some(({ office }) => office === say.office)) throw new NoSuchOffice();
      return { offices };
    }),
  );

  return app;
}

/** An office that never asked to read the farm. */
class NoSuchOffice extends Error {}

function refuse(reply: FastifyReply, status: number, code: RefusedReply['code'], message: string) {
  return reply.code(status).send({ code, message } satisfies RefusedReply);
}
