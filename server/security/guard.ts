import { isIP } from 'node:net';
import { hostname } from 'node:os';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { Pace } from './pace.ts';
import { LOOPBACK_NAMES, mayFollow, visitorOf } from './visitor.ts';

/** What other machines may ask: a page with its chunks and photos at once, then what a person taps. */
const PER_SECOND = 20;
const BURST = 200;
/** What any answer may load where it does not say otherwise. */
const NOTHING = "default-src 'none'; frame-ancestors 'none'";

/**
 * The one place where a request is let in or turned away: by the name it asks for, the site that made it, who asks and
 * how often. A route is closed to followers unless {@link mayFollow} says that it reads.
 */
export function addGuard(app: FastifyInstance, boundTo: string): void {
  const loopbackOnly = LOOPBACK_NAMES.includes(boundTo);
  const pace = new Pace(PER_SECOND, BURST);
  app.addHook('onRequest', async (request, reply) => {
    const refused = turnedAway(request, loopbackOnly, pace);
    if (refused !== null) return reply.code(refused.status).send({ message: refused.message });
    return undefined;
  });
  app.addHook('onSend', async (_request, reply) => addHeaders(reply));
  // A refused upgrade leaves its bare socket to us; kept open it would hold up the shutdown.
  app.addHook('onResponse', async (request, reply) => {
    if (request.headers.upgrade !== undefined && reply.statusCode >= 400) request.raw.socket.destroy();
  });
}

function turnedAway(request: FastifyRequest, loopbackOnly: boolean, pace: Pace) {
  const { headers, ip, method } = request;
  const host = headers.host ?? '';
  const follower = visitorOf(request) === 'follower';
  if (follower && !pace.allows(ip, performance.now()))
    return { status: 429, message: 'Too many requests. Wait a few seconds.' };
  if (!isOwnName(host.replace(/:\d+$/, ''), loopbackOnly))
    return {
      status: 421,
      message: loopbackOnly
        ? 'This kiosk answers to localhost only.'
        : 'This kiosk answers to its number or its own name only.',
    };
  const { origin } = headers;
  if (origin !== undefined && origin !== `http://${host}` && origin !== `https://${host}`)
    return { status: 403, message: 'Requests from other sites are not taken.' };
  if (isFromOtherSite(request)) return { status: 403, message: 'Requests from other sites are not taken.' };
  if (follower && !mayFollow(method, request.routeOptions.url))
    return { status: 403, message: 'Other machines only follow. This is done at the kiosk itself.' };
  return null;
}

/** A foreign name pointed at this address (DNS rebinding) is no number, and not this board's name. */
function isOwnName(name: string, loopbackOnly: boolean): boolean {
  if (LOOPBACK_NAMES.includes(name)) return true;
  if (loopbackOnly) return false;
  const own = hostname().toLowerCase();
  return isIP(name.replace(/^\[|\]$/g, '')) !== 0 || [own, `${own}.local`].includes(name.toLowerCase());
}

/** Whether a page of another site, or of another port here, had the browser ask; such a page may link to Home only. */
function isFromOtherSite({ headers, url }: FastifyRequest): boolean {
  const site = headers['sec-fetch-site'];
  return (site === 'cross-site' || site === 'same-site') && url !== '/';
}

function addHeaders(reply: FastifyReply): void {
  const said = (name: string) => reply.hasHeader(name) || reply.raw.hasHeader(name);
  if (!said('content-security-policy')) reply.header('content-security-policy', NOTHING);
  reply.header('x-content-type-options', 'nosniff');
  reply.header('referrer-policy', 'no-referrer');
  reply.header('cross-origin-resource-policy', 'same-origin');
}
