/** The part of an address that keeps what a list is narrowed to, such as "by=41". */
export function prefixPart(prefix: string): string {
  return `by=${prefix}`;
}

/** The prefix of such a part; `null` for any other. */
export function prefixIn(part: string | undefined): string | null {
  return part?.startsWith('by=') === true ? part.slice(3) : null;
}
