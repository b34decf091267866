import { inspect } from 'node:util';

/** What opens a door: a token, a key of a hub or a hash of one. Ids are shorter, and stay. */
const SECRET = /\b[\w-]{40,}(?![\w-])|\b[A-Za-z0-9+/]{40,}={0,2}/g;
const KEY_BLOCK = /-----BEGIN [A-Z ]+-----[\s\S]*?-----END [A-Z ]+-----/g;
/** What is named as one, however short: `"pin":"2580"`, `code: 12345678`, `postgres://hub:word@…`. */
const NAMED = /((?:pin|code|token|password|key|cookie)["']?\s*[:=]\s*["']?)[^\s"',;}]+/gi;
const IN_ADDRESS = /(:\/\/[^\s:/@]+:)[^\s@]+@/g;
const HIDDEN = '[hidden]';
/** Codes by which the system and the database name a failure, and a program its end: nothing that opens a door. */
const FAILURE = /^(?:[A-Z][A-Z\d_]+|\d{1,3})$/;

/** A line of the log: when, what happened and the error with its trace; whatever would open a door is left out. */
export function logLine(message: string, error: unknown, at = new Date()): string {
  return `${at.toISOString()} ${withoutSecrets(`${message}: ${typeof error === 'string' ? error : inspect(error)}`)}`;
}

/** Writes such a line to the error output, which the board's journal keeps. */
export function log(message: string, error: unknown): void {
  console.error(logLine(message, error));
}

function withoutSecrets(text: string): string {
  return text
    .replace(KEY_BLOCK, HIDDEN)
    .replace(IN_ADDRESS, `$1${HIDDEN}@`)
    .replace(NAMED, (whole: string, before: string) =>
      FAILURE.test(whole.slice(before.length)) ? whole : `${before}${HIDDEN}`,
    )
    .replace(SECRET, HIDDEN);
}
