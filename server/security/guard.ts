import { isIP } from 'node:net';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Refusal } from '../../shared/intent.ts';
import { refusalWords } from '../barn/refusal-words.ts';
import type { House } from '../house.ts';
import { LOOPBACK_NAMES, networkNames } from '../network/own-names.ts';
import { whyNotRoute } from './may.ts';
import { Pace } from './pace.ts';
import { addSafetyHeaders } from './safety-headers.ts';
import type { Visitor } from './visitor.ts';

declare module 'fastify' {
  interface FastifyRequest {
    /** Who asks. */
    visitor: Visitor;
  }
}

/** What other machines may ask: a page with its chunks and photos at once, then what a person taps. */
const PER_SECOND = 20;
const BURST = 200;

/** What the guard asks of the house. */
type Guarded = Pick<House, 'network' | 'barn'>;

/**
 * The one place where a request is let in or turned away: by the name it asks for, the site that made it, how often, and
 * whether whoever asks may have that route.
 */
export function addGuard(app: FastifyInstance, house: Guarded, boundTo: string): void {
  const loopbackOnly = LOOPBACK_NAMES.includes(boundTo);
  const pace = new Pace(PER_SECOND, BURST);
  // Set below, before anything can read it.
  app.decorateRequest('visitor');
  app.addHook('onRequest', async (request, reply) => {
    request.visitor = house.network.visitorOf(request);
    const refused = turnedAway(request, house, loopbackOnly, pace);
    if (refused === null) return undefined;
    const { status, ...told } = refused;
    return reply.code(status).send(told);
  });
  app.addHook('onSend', async (_request, reply) => addSafetyHeaders(reply));
  // A refused upgrade leaves its bare socket to us; kept open it would hold up the shutdown.
  app.addHook('onResponse', async (request, reply) => {
    if (request.headers.upgrade !== undefined && reply.statusCode >= 400) request.raw.socket.destroy();
  });
}

interface TurnedAway {
  readonly status: number;
  readonly message: string;
  readonly code?: Refusal;
}

function turnedAway(
  request: FastifyRequest,
  { network, barn }: Guarded,
  loopbackOnly: boolean,
  pace: Pace,
): TurnedAway | null {
  const { headers, method, visitor } = request;
  const { way, sender, proxyName } = network.originOf(request);
  if (visitor.kind !== 'board' && !pace.allows(sender, performance.now()))
    return { status: 429, message: 'Too many requests. Wait a few seconds.' };
  const host = headers.host ?? '';
  if (!isOwnName(host.replace(/:\d+$/, ''), way === 'board' && loopbackOnly, proxyName))
    return {
      status: 421,
      message: loopbackOnly
        ? 'This kiosk answers to localhost only.'
        : 'This kiosk answers to its number or its own name only.',
    };
  const own = [`http://${host}`, `https://${host}`, `https://${proxyName}`];
  if (headers.origin !== undefined && !own.includes(headers.origin))
    return { status: 403, message: 'Requests from other sites are not taken.' };
  if (isFromOtherSite(request)) return { status: 403, message: 'Requests from other sites are not taken.' };
  const why = whyNotRoute(visitor, method, request.routeOptions.url);
  if (why === null) return null;
  const message = refusalWords(why, barn.context.memory.settings.language);
  return { status: why === 'not-paired' ? 401 : 403, message, code: why };
}

/** A foreign name pointed at this address (DNS rebinding) is no number, and not this board's name. */
function isOwnName(name: string, loopbackOnly: boolean, proxyName: string | null): boolean {
  if (LOOPBACK_NAMES.includes(name)) return true;
  if (loopbackOnly) return false;
  if (isIP(name.replace(/^\[|\]$/g, '')) !== 0) return true;
  return name.toLowerCase() === proxyName || networkNames().includes(name.toLowerCase());
}

/** Whether a page of another site, or of another port here, had the browser ask; such a page may link to Home only. */
function isFromOtherSite({ headers, url }: FastifyRequest): boolean {
  const site = headers['sec-fetch-site'];
  return (site === 'cross-site' || site === 'same-site') && url !== '/';
}
