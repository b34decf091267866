import type { FastifyRequest } from 'fastify';
import type { Way } from './door.ts';

/** The cookie that holds the token of a device; its prefix has the browser keep it to this host and to TLS. */
export const COOKIE = '__Host-byreside';

/** An address of this very machine. */
const LOOPBACK = /^(::1|(::ffff:)?127\.\d+\.\d+\.\d+)$/;
/** What a proxy adds to what it hands on. */
const HANDED_ON = /^(forwarded|via|x-forwarded-.+|x-real-ip|x-client-ip|true-client-ip|cf-connecting-ip)$/;

/** What of a request tells who sent it. */
export type Arriving = Pick<FastifyRequest, 'ip' | 'headers'> & {
  readonly raw: { readonly httpVersion: string };
};

/**
 * Whether a request comes from the board itself.
 *
 * A proxy on the board connects from the board on behalf of somebody else: what carries a sign of one is no word of the
 * board. HTTP/1.0 is such a sign: no browser speaks it, and proxies do unless told otherwise. A proxy that shows none is
 * given the door of its own.
 */
export function isBoard(way: Way, { ip, headers, raw }: Arriving): boolean {
  return (
    way === 'board' &&
    LOOPBACK.test(ip) &&
    raw.httpVersion !== '1.0' &&
    !Object.keys(headers).some((name) => HANDED_ON.test(name))
  );
}

/** Whether what a request says could not be read on the way: only then may it carry a token. */
export function isSecret(way: Way, { headers }: Pick<Arriving, 'headers'>): boolean {
  return way === 'tls' || (way === 'proxy' && headers['x-forwarded-proto'] === 'https');
}

/** The address of who asks; the proxy on the board is believed about whom it hands on, nobody else is. */
export function senderOf(way: Way, { ip, headers }: Pick<Arriving, 'ip' | 'headers'>): string {
  const handedOn = headers['x-forwarded-for'];
  if (way !== 'proxy' || handedOn === undefined) return ip;
  // The last one is the proxy's own word; those before it are whatever it was told.
  return String(handedOn).split(',').at(-1)?.trim() ?? ip;
}

/** The token that a request carries. */
export function tokenIn({ headers }: Pick<Arriving, 'headers'>): string | null {
  const found = (headers.cookie ?? '').split('; ').find((each) => each.startsWith(`${COOKIE}=`));
  return found?.slice(COOKIE.length + 1) ?? null;
}
