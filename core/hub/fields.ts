import { byClock } from './causal-order.ts';

/** What an event says of the fields of one animal. */
export interface FieldsSaid {
  readonly id: string;
  /** A hybrid clock, as `clockText` writes it. */
  readonly clock: string;
  readonly fields: Readonly<Record<string, unknown>>;
  /** By field, the ids of the events whose word on it this one takes the place of. */
  readonly over: Readonly<Record<string, readonly string[]>>;
}

/** Fields that make sense together only: all of them are as the word on the first left them. */
const WITH_LIFE = ['life', 'left_at_ms', 'left_by', 'merged_into_id'];

/**
 * What fields of an animal are by all that was said of it, in whatever order it came.
 *
 * Only words that no other takes the place of count; of several, which were said apart, the one with the latest clock.
 * Whether it is on the farm goes with when, by whom and into which record it left.
 */
export function fieldsNow(said: readonly FieldsSaid[], fields: readonly string[]): Record<string, unknown> {
  const now: Record<string, unknown> = {};
  for (const field of fields) {
    if (WITH_LIFE.includes(field)) {
      const word = wordOn(said, 'life');
      for (const part of WITH_LIFE) now[part] = word?.fields[part] ?? null;
    } else now[field] = wordOn(said, field)?.fields[field];
  }
  return now;
}

function wordOn(said: readonly FieldsSaid[], field: string): FieldsSaid | undefined {
  const words = said.filter(({ fields }) => field in fields);
  const replaced = new Set(words.flatMap(({ over }) => over[field] ?? []));
  const standing = words.filter(({ id }) => !replaced.has(id));
  return standing.sort(byClock).at(-1);
}
