import type { FastifyReply } from 'fastify';

/** What any answer may load where it does not say otherwise. */
const NOTHING = "default-src 'none'; frame-ancestors 'none'";

/** Sets on an answer what keeps a browser from making more of it than it is; a policy that is set already stands. */
export function addSafetyHeaders(reply: FastifyReply): void {
  const said = (name: string) => reply.hasHeader(name) || reply.raw.hasHeader(name);
  if (!said('content-security-policy')) reply.header('content-security-policy', NOTHING);
  reply.header('x-content-type-options', 'nosniff');
  reply.header('referrer-policy', 'no-referrer');
  reply.header('cross-origin-resource-policy', 'same-origin');
}
