/**
 * The new value, with every part of it that equals the old one taken from the old one.
 *
 * What did not change keeps its identity, and with it the elements drawn from it. Both are values of JSON; members of
 * a list are compared with the old one of the same `id`, or else of the same place.
 */
export function keepSame<T>(before: unknown, after: T): T {
  if (Object.is(before, after)) return after;
  if (Array.isArray(before) && Array.isArray(after)) return keepList(before, after) as T;
  if (isRecord(before) && isRecord(after)) return keepRecord(before, after) as T;
  return after;
}

function keepList(before: readonly unknown[], after: readonly unknown[]): readonly unknown[] {
  const byId = new Map(before.map((each) => [idOf(each), each]));
  const kept = after.map((each, at) => {
    const id = idOf(each);
    return keepSame(id === undefined ? before[at] : byId.get(id), each);
  });
  return kept.length === before.length && kept.every((each, at) => Object.is(each, before[at]))
    ? before
    : kept;
}

function keepRecord(
  before: Readonly<Record<string, unknown>>,
  after: Readonly<Record<string, unknown>>,
): Readonly<Record<string, unknown>> {
  const kept = Object.entries(after).map(([key, value]) => [key, keepSame(before[key], value)] as const);
  return kept.length === Object.keys(before).length &&
    kept.every(([key, value]) => Object.hasOwn(before, key) && Object.is(value, before[key]))
    ? before
    : Object.fromEntries(kept);
}

function idOf(value: unknown): unknown {
  return isRecord(value) ? value['id'] : undefined;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
