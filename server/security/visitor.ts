import type { FastifyRequest } from 'fastify';

/** Names by which a board calls itself and nobody else can reach it; without and with the brackets of an address bar. */
export const LOOPBACK_NAMES: readonly string[] = ['localhost', '127.0.0.1', '::1', '[::1]'];

/** An address of this very machine. */
const LOOPBACK = /^(::1|(::ffff:)?127\.\d+\.\d+\.\d+)$/;
/** What a proxy adds to what it hands on. */
const HANDED_ON = ['forwarded', 'via', 'x-forwarded-for', 'x-real-ip'];

/** Who asks: the board itself, which may do all, or another machine, which only follows. */
export type Visitor = 'board' | 'follower';

/**
 * Who asks, by the connection and nothing the request says of itself.
 *
 * A proxy on the board connects from the board on behalf of somebody else: whatever it hands on counts as a follower's.
 */
export function visitorOf({ ip, headers }: Pick<FastifyRequest, 'ip' | 'headers'>): Visitor {
  return LOOPBACK.test(ip) && HANDED_ON.every((name) => headers[name] === undefined) ? 'board' : 'follower';
}

/** Pages that keep the paper they were asked for. */
const KEEP_PAPER = ['/print/jug/:id', '/print/group/:id'];

/** Whether a follower may ask for a route: it reads and changes nothing. A route nobody registered has none of its own. */
export function mayFollow(method: string, route: string | undefined): boolean {
  return (method === 'GET' || method === 'HEAD') && !KEEP_PAPER.includes(route ?? '');
}
