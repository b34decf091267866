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

/** Says that an entry of the farm's own is used no more. It stays in the file, and records keep what they were made with. */
export const Retirement = z.strictObject({
  /** The id of a presentation or a rule of the farm's own. */
  retire: z.string().min(1),
  by: z.string().min(1).max(40),
  /** The farm's day, such as "2027-04-12"; `null` where the clock was not to be trusted. */
  on: z.iso.date().nullable(),
});
/** Says that an entry of the farm's own is used no more. */
export type Retirement = z.infer<typeof Retirement>;

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
  /** What was retired stands in it still: a jug in use and the records lead there. */
  readonly formulary: Formulary;
  /** Ids of the presentations and rules the farm added. */
  readonly own: ReadonlySet<string>;
  /** Ids of those that are used no more. */
  readonly retired: ReadonlySet<string>;
  readonly leftOut: readonly LeftOut[];
}

/**
 * Adds the entries of a farm's own file to what ships: whole medicines, or parts of one (`addTo`); then takes out of use
 * what a later entry retires.
 *
 * Each entry stands or falls alone; one that is bad is left out and told. None can change what ships: an id that is
 * taken refuses the entry.
 */
export function withAdditions(shipped: Formulary, entries: readonly unknown[]): WithAdditions {
  let formulary = shipped;
  const own = new Set<string>();
  const retired = new Set<string>();
  const leftOut: LeftOut[] = [];
  entries.forEach((raw, i) => {
    const outcome = holds(raw, 'retire') ? retirement(own, raw) : added(formulary, raw);
    if ('retired' in outcome) retired.add(outcome.retired);
    else if ('formulary' in outcome) {
      formulary = outcome.formulary;
      for (const id of outcome.ids) own.add(id);
    } else leftOut.push({ entry: i + 1, ...outcome });
  });
  return { formulary, own, retired, leftOut };
}

type Bad = Omit<LeftOut, 'entry'>;

function holds(raw: unknown, key: string): boolean {
  return typeof raw === 'object' && raw !== null && key in raw;
}

function retirement(own: ReadonlySet<string>, raw: unknown): { retired: string } | Bad {
  const parsed = Retirement.safeParse(raw);
  if (!parsed.success) return firstIssue(parsed.error);
  const { retire } = parsed.data;
  if (!own.has(retire)) return { field: 'retire', detail: `no entry before this one added "${retire}"` };
  return { retired: retire };
}

function added(formulary: Formulary, raw: unknown): { formulary: Formulary; ids: readonly string[] } | Bad {
  const parsed = holds(raw, 'addTo') ? Addition.safeParse(raw) : Medicine.safeParse(raw);
  if (!parsed.success) return firstIssue(parsed.error);
  const entry = parsed.data;
  const taken = idTaken(formulary, entry);
  if (taken !== null) return { field: 'id', detail: `the id "${taken}" is taken` };
  const ids = [...entry.presentations, ...entry.regimens].map(({ id }) => id);
  if (!('addTo' in entry)) return { formulary: [...formulary, entry], ids };
  const medicine = formulary.find(({ id }) => id === entry.addTo);
  if (medicine === undefined) return { field: 'addTo', detail: `there is no medicine "${entry.addTo}"` };
  // Only the whole can tell whether a rule's printed volumes fit its presentations.
  const whole = Medicine.safeParse({
    ...medicine,
    presentations: [...medicine.presentations, ...entry.presentations],
    regimens: [...medicine.regimens, ...entry.regimens],
  });
  if (!whole.success) return firstIssue(whole.error);
  return { formulary: formulary.map((each) => (each === medicine ? whole.data : each)), ids };
}

function firstIssue(error: z.ZodError): Bad {
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
