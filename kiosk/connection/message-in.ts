import type { ServerMessage } from '../../shared/message.ts';

type Hello = Extract<ServerMessage, { type: 'hello' }>;

const PROTOCOL: Hello['protocol'] = 1;
/** Every kind of message there is. */
const KINDS: Readonly<Record<ServerMessage['type'], true>> = {
  hello: true,
  visitor: true,
  snapshot: true,
  patch: true,
  answer: true,
  pong: true,
  say: true,
  hush: true,
  earcon: true,
  'spoken-wish': true,
};

/** What the server sent, or `null` where this page does not know such a message. */
export function messageIn(data: unknown): ServerMessage | null {
  const read = jsonOf(data);
  if (typeof read !== 'object' || read === null || !('type' in read)) return null;
  if (typeof read.type !== 'string' || !Object.hasOwn(KINDS, read.type)) return null;
  // Whoever gave out this very page speaks its language: what the greeting says is all there is to check.
  const message = read as ServerMessage;
  return message.type === 'hello' && message.protocol !== PROTOCOL ? null : message;
}

/** Whether a greeting comes from a server that gives out another page than this one; `null` is one nobody knows. */
export function isOfAnotherPage(message: ServerMessage, page: string | null): boolean {
  return message.type === 'hello' && message.page !== null && page !== null && message.page !== page;
}

/** The script a built page began with, by the address of a module in it; `null` for one that was not built. */
export function scriptOf(url: string): string | null {
  return /\/assets\/([^/?#]+)/.exec(url)?.[1] ?? null;
}

function jsonOf(data: unknown): unknown {
  try {
    return typeof data === 'string' ? JSON.parse(data) : undefined;
  } catch {
    return undefined;
  }
}
