import type { Clear } from '../dosing/withdrawal.ts';
import type { AnimalClass, Species } from '../herd/animal.ts';
import { DAY_MS } from '../moment.ts';
import { type Cell, csvRecord } from './csv.ts';

/**
 * One line of the treatment register: the union of what the rules read ask for (21 CFR 530.5, CPG 615.200), with lot, expiry
 * and mixing as fields of our own. Times are milliseconds since 1970; `null` where a thing is not known.
 */
export interface RegisterLine {
  readonly treatmentId: string;
  readonly givenAtMs: number;
  /** Whether the clock could be trusted: else all times of the line are provisional. */
  readonly clockTrusted: boolean;
  readonly animal: {
    readonly name: string;
    readonly tag: string | null;
    readonly species: Species;
    readonly class: AnimalClass;
    readonly ageDays: number | null;
    readonly bred: boolean;
    readonly inMilk: boolean;
  };
  readonly weight: { readonly kilograms: number; readonly method: string };
  /** Why it was treated, in words of a list. */
  readonly condition: string | null;
  readonly medicine: {
    /** Established name, and active. */
    readonly name: string;
    readonly active: string;
    readonly mgPerMl: number;
    readonly lot: string | null;
    /** When its printed month is over. */
    readonly expiresAtMs: number | null;
  };
  /** How the jug was mixed; `null` for a medicine that was bought ready. */
  readonly mixed: {
    readonly powderGrams: number | null;
    readonly waterMl: number | null;
    readonly by: string;
    readonly atMs: number;
  } | null;
  readonly dose: {
    readonly targetMgPerKg: number;
    readonly computedMl: number;
    /** What was swallowed; the whole draw where nobody saw how much of it was. */
    readonly givenMl: number;
    readonly route: string;
    readonly outcome: string;
  };
  readonly use: 'label' | 'extra-label';
  /** The veterinarian's direction; `null` where none was needed. */
  readonly directedBy: string | null;
  readonly meat: Clear;
  readonly milk: Clear;
  readonly by: string;
  readonly reaction: string | null;
  /** What was corrected later, in words, oldest first. The line itself stays as it was. */
  readonly corrections: readonly string[];
}

const HEADINGS = [
  'treatment',
  'given at',
  'clock trusted',
  'animal',
  'tag',
  'species',
  'class',
  'age days',
  'bred',
  'in milk',
  'weight kg',
  'weight by',
  'condition',
  'medicine',
  'active',
  'strength mg/mL',
  'lot',
  'expires',
  'powder g',
  'water mL',
  'mixed by',
  'mixed at',
  'target mg/kg',
  'computed mL',
  'given mL',
  'route',
  'outcome',
  'use',
  'directed by',
  'meat clear',
  'milk clear',
  'given by',
  'reaction',
  'corrections',
] as const;

/** The first line of the register as CSV. */
export function registerHeading(): string {
  return csvRecord(HEADINGS);
}

/** A line of the register as CSV, so that ten years of them can be written one by one. Times are RFC 3339 in UTC. */
export function registerRecord(line: RegisterLine): string {
  const { animal, weight, medicine, mixed, dose } = line;
  const cells: Record<(typeof HEADINGS)[number], Cell> = {
    treatment: line.treatmentId,
    'given at': instant(line.givenAtMs),
    'clock trusted': yesOrNo(line.clockTrusted),
    animal: animal.name,
    tag: animal.tag,
    species: animal.species,
    class: animal.class,
    'age days': animal.ageDays,
    bred: yesOrNo(animal.bred),
    'in milk': yesOrNo(animal.inMilk),
    'weight kg': weight.kilograms,
    'weight by': weight.method,
    condition: line.condition,
    medicine: medicine.name,
    active: medicine.active,
    'strength mg/mL': medicine.mgPerMl,
    lot: medicine.lot,
    expires: medicine.expiresAtMs === null ? null : printedMonth(medicine.expiresAtMs),
    'powder g': mixed?.powderGrams ?? null,
    'water mL': mixed?.waterMl ?? null,
    'mixed by': mixed?.by ?? null,
    'mixed at': mixed === null ? null : instant(mixed.atMs),
    'target mg/kg': dose.targetMgPerKg,
    'computed mL': dose.computedMl,
    'given mL': dose.givenMl,
    route: dose.route,
    outcome: dose.outcome,
    use: line.use,
    'directed by': line.directedBy,
    'meat clear': clear(line.meat),
    'milk clear': clear(line.milk),
    'given by': line.by,
    reaction: line.reaction,
    corrections: line.corrections.length === 0 ? null : line.corrections.join('; '),
  };
  return csvRecord(HEADINGS.map((heading) => cells[heading]));
}

/** The month that is over at an instant, as "2027-01"; half a month back lies in it whatever the zone. */
export function printedMonth(overAtMs: number): string {
  return instant(overAtMs - 15 * DAY_MS).slice(0, 7);
}

function instant(atMs: number): string {
  return new Date(atMs).toISOString();
}

function yesOrNo(value: boolean): string {
  return value ? 'yes' : 'no';
}

/** What is not known is written so, and is never an empty cell that reads as clear. */
function clear(until: Clear): string {
  if (until.kind === 'at') return instant(until.atMs);
  return until.kind === 'unknown' ? 'not known' : 'not for people';
}
