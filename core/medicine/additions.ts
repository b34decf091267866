import { z } from 'zod';
import type { Formulary } from './formulary.ts';
import { Medicine } from './medicine.ts';
import { Presentation } from './presentation.ts';
import { Regimen } from './regimen.ts';

/** What a farm adds to a medicine that ships: presentations of its own, rules of its own. */
export const Addition = z.strictObject({
  addTo: z.string().min(1),
  presentations: z.array(Presentation).default([]),
  regimens: z.array(Regimen).default([]),
});
/** What a farm adds to a medicine that ships. */
export type Addition = z.infer<typeof Addition>;

/** One entry that was left out, and why. */
export interface LeftOut {
  /** Its place in the file, from 1. */
  readonly entry: number;
  /** The field it is about, such as `strength.value`; empty for the whole entry. */
  readonly field: string;
  readonly detail: string;
}

/** A formulary with what the farm added, and what of it made no sense. */
export interface WithAdditions {
  readonly formulary: Formulary;
  readonly leftOut: readonly LeftOut[];
}

/**
 * Adds the entries of a farm's own file to what ships: whole medicines, or parts of one (`addTo`).
 *
 * Each entry stands or falls alone; one that is bad is left out and told. None can change what ships: an id that is
 * taken refuses the entry.
 */
export function withAdditions(shipped: Formulary, entries: readonly unknown[]): WithAdditions {
  let formulary = shipped;
  const leftOut: LeftOut[] = [];
  entries.forEach((raw, i) => {
    const outcome = added(formulary, raw);
    if ('formulary' in outcome) formulary = outcome.formulary;
    else leftOut.push({ entry: i + 1, ...outcome });
  });
  return { formulary, leftOut };
}

type Outcome = { formulary: Formulary } | Omit<LeftOut, 'entry'>;

function added(formulary: Formulary, raw: unknown): Outcome {
  const isAddition = typeof raw === 'object' && raw !== null && 'addTo' in raw;
  const parsed = isAddition ? Addition.safeParse(raw) : Medicine.safeParse(raw);
  if (!parsed.success) return firstIssue(parsed.error);
  const entry = parsed.data;
  const taken = idTaken(formulary, entry);
  if (taken !== null) return { field: 'id', detail: `the id "${taken}" is taken` };
  if (!('addTo' in entry)) return { formulary: [...formulary, entry] };
  const medicine = formulary.find(({ id }) => id === entry.addTo);
  if (medicine === undefined) return { field: 'addTo', detail: `there is no medicine "${entry.addTo}"` };
  // Only the whole can tell whether a rule's printed volumes fit its presentations.
  const whole = Medicine.safeParse({
    ...medicine,
    presentations: [...medicine.presentations, ...entry.presentations],
    regimens: [...medicine.regimens, ...entry.regimens],
  });
  if (!whole.success) return firstIssue(whole.error);
  return { formulary: formulary.map((each) => (each === medicine ? whole.data : each)) };
}

function firstIssue(error: z.ZodError): Omit<LeftOut, 'entry'> {
  const [issue] = error.issues;
  return { field: issue?.path.join('.') ?? '', detail: issue?.message ?? 'not an entry' };
}

function idsOf(entry: Medicine | Addition): string[] {
  return [
    ...('id' in entry ? [entry.id] : []),
    ...[...entry.presentations, ...entry.regimens].map(({ id }) => id),
  ];
}

function idTaken(formulary: Formulary, entry: Medicine | Addition): string | null {
  const known = new Set(formulary.flatMap(idsOf));
  const ids = idsOf(entry);
  return ids.find((id, i) => known.has(id) || ids.indexOf(id) !== i) ?? null;
}
