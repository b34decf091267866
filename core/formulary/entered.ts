import type { z } from 'zod';

/** By whom and when something was entered at Shed, and where it stands. */
export interface EnteredBy {
  /** The person who was working. */
  readonly by: string;
  /** The farm's day, such as "2027-04-12"; `null` where the clock was not to be trusted. */
  readonly on: string | null;
}

/** Where an entered figure comes from, in one line. */
export function enteredSource({ by, on }: EnteredBy, from: 'label' | 'veterinarian'): string {
  const whose = from === 'label' ? 'from the label in hand' : 'on the veterinarian’s direction';
  return `Entered at Shed by ${by}, ${on ?? 'on a day not known'}, ${whose}`;
}

/** Why what was entered cannot be kept: the field, such as `target`, and the schema's own sentence. */
export interface CannotKeep {
  readonly field: string;
  readonly detail: string;
}

/** What was entered as a schema takes it, or why not. */
export function keptAs<S extends z.ZodType>(schema: S, entered: unknown): z.infer<S> | CannotKeep {
  const parsed = schema.safeParse(entered);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  return { field: issue?.path.join('.') ?? '', detail: issue?.message ?? 'not an entry' };
}

/** Whether it cannot be kept. */
export function isRefused(kept: object): kept is CannotKeep {
  return 'detail' in kept;
}

/** The parts that tell where a figure comes from, not what it is. */
const PROVENANCE = new Set(['id', 'source', 'evidence', 'why']);

/** Whether two parts of a medicine state the same figures, wherever these come from. */
export function sameFigures(one: object, other: object): boolean {
  return bare(one) === bare(other);
}

function bare(part: object): string {
  return JSON.stringify(part, (key, value: unknown) => {
    if (PROVENANCE.has(key)) return undefined;
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
    return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}
