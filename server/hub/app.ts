import fastify, {
  type FastifyError,
  type FastifyInstance,
  type FastifyReply,
  type FastifyRequest,
} from 'fastify';
import type { z } from 'zod';
import { type Caller, callerOf, kiosksNow, mustBeIn, ShutOut } from './credentials.ts';
import type { FarmClient, HubDatabase } from './database.ts';
import { idAt, NotYourLife, pullEvents, pushEvents } from './herd-log.ts';
import { News } from './news.ts';
import { IdBody, MOST_BYTES, PullBody, PushBody, type RefusedReply } from './wire.ts';

/** What the hub is served with. */
export interface HubAppOptions {
  readonly database: HubDatabase;
  /** Certificate and key as PEM; `null` serves in the clear. */
  readonly tls: { readonly cert: string; readonly key: string } | null;
  readonly log: (message: string, error: unknown) => void;
}

type Admitted = Extract<Caller, { ok: true }>;

const SHUT_OUT = {
  'unknown-kiosk': 'This hub does not know the kiosk. Write a new invitation for it at the hub.',
  revoked: 'This kiosk was shut out at the hub. Write a new invitation for it at the hub.',
} as const;

/** Builds the hub's web server, without listening. */
export function buildHubApp({ database, tls, log }: HubAppOptions): FastifyInstance {
  const base = { bodyLimit: MOST_BYTES, forceCloseConnections: true, logger: false } as const;
  const app = (tls === null ? fastify(base) : fastify({ ...base, https: tls })) as unknown as FastifyInstance;
  const news = new News();
  app.addHook('preClose', async () => news.end());
  app.setErrorHandler((error: FastifyError, _request, reply) => {
    if (error instanceof NotYourLife) return refuse(reply, 403, 'bad-input', `${error.message}.`);
    if (error instanceof ShutOut) return refuse(reply, 401, 'revoked', SHUT_OUT.revoked);
    const status = error.statusCode ?? 500;
    if (status === 413) return refuse(reply, 413, 'too-large', 'More was sent at once than is taken.');
    if (status < 500) return refuse(reply, status, 'bad-input', error.message);
    log('a request failed', error);
    return refuse(reply, 500, 'failed', 'Something went wrong at the hub; its log says what.');
  });

  app.get('/v1/health', async () => ({ ok: true }));

  /** A route for kiosks: who asks is known, and what is asked is of its form. */
  function forKiosks<B>(
    url: string,
    form: z.ZodType<B>,
    answer: (caller: Admitted, body: B) => Promise<unknown>,
  ): void {
    app.post(url, async (request: FastifyRequest, reply) => {
      const caller = await callerOf(database, request.headers.authorization);
      if (!caller.ok) return refuse(reply, 401, caller.why, SHUT_OUT[caller.why]);
      const parsed = form.safeParse(request.body);
      if (!parsed.success) {
        const [issue] = parsed.error.issues;
        return refuse(reply, 400, 'bad-input', `${issue?.path.join('.')}: ${issue?.message}`);
      }
      return answer(caller, parsed.data);
    });
  }

  /** Does something with a farm's rows, all or nothing, for a kiosk that is still let in when it is done. */
  const forCaller = <T>(caller: Admitted, work: (client: FarmClient) => Promise<T>): Promise<T> =>
    database.asFarm(caller.farm, async (client) => {
      const done = await work(client);
      await mustBeIn(client, caller);
      return done;
    });

  forKiosks('/v1/push', PushBody, async (caller, batch) => {
    const { farm, credential } = caller;
    const answer = await forCaller(caller, (client) => pushEvents(client, farm, credential, batch));
    if (answer.ok) news.tell(farm);
    return answer;
  });

  forKiosks('/v1/pull', PullBody, async (caller, { kiosk, have, waitMs }) => {
    const { farm } = caller;
    const known = new Map(Object.entries(have));
    const look = () =>
      forCaller(caller, async (client) => ({
        pulled: await pullEvents(client, farm, known),
        kiosks: await kiosksNow(client, caller, kiosk),
      }));
    // Listens before it looks: what comes between the two is not missed.
    const next = news.wait(farm, waitMs);
    let found = await look();
    if (found.pulled.events.length === 0 && found.pulled.parted.length === 0 && waitMs > 0) {
      await next;
      found = await look();
    }
    const { events, heads, parted } = found.pulled;
    return { events, heads: Object.fromEntries(heads), parted, kiosks: found.kiosks };
  });

  forKiosks('/v1/id', IdBody, async (caller, { life, sequence }) => ({
    id: await forCaller(caller, (client) => idAt(client, caller.farm, life, sequence)),
  }));

  return app;
}

function refuse(reply: FastifyReply, status: number, code: RefusedReply['code'], message: string) {
  return reply.code(status).send({ code, message } satisfies RefusedReply);
}
