/** A whole number asked for in a query, or the usual one where none was. */
export function count(text: string | undefined, otherwise: number): number {
  return text !== undefined && /^\d{1,7}$/.test(text) ? Number(text) : otherwise;
}

/** The bytes of a file that was sent, whatever it calls itself. */
export function bytesOf(body: unknown): Buffer {
  return Buffer.isBuffer(body) ? body : Buffer.from(typeof body === 'string' ? body : '');
}
