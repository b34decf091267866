import type { FastifyReply } from 'fastify';

/** How a page of a long list is asked for: rows below a number, the newest first, and at most so many. */
export interface PageQuery {
  readonly before?: string;
  readonly limit?: string;
}

/** How many rows a page has, at the most and where nobody says. */
const MOST = 1000;

/** What a query asks for; what is no number from 1 counts as not said. */
export function pageAsked({ before, limit }: PageQuery): { below: number; most: number } {
  return {
    below: numberFrom(before) ?? Number.MAX_SAFE_INTEGER,
    most: Math.min(numberFrom(limit) ?? MOST, MOST),
  };
}

function numberFrom(text: unknown): number | null {
  return typeof text === 'string' && /^[1-9]\d{0,14}$/.test(text) ? Number(text) : null;
}

/** Names the next page in a `Link` header, where there may be one (RFC 8288). */
export function linkNext(
  reply: FastifyReply,
  path: string,
  last: number | undefined,
  most: number,
  rows: number,
): void {
  if (last === undefined || rows < most || last <= 1) return;
  reply.header('link', `<${path}?before=${last}&limit=${most}>; rel="next"`);
}
