import { checkStanding, type ScaleChecking } from '../checking/standing.ts';
import type { Animal } from '../herd/animal.ts';
import { doubtOf } from '../herd/plausible.ts';
import type { Approval } from '../medicine/approval.ts';
import type { Formulary } from '../medicine/formulary.ts';
import type { RegimenInForce } from '../medicine/in-force.ts';
import { type Jug, jugLife, remaining } from '../mixing/jug.ts';
import type { BoardTime } from '../moment.ts';
import type { Proven } from '../reduction/proven.ts';
import { unreachable } from '../unreachable.ts';
import type { Held } from '../weighing/settle.ts';
import { limitCautions } from './animal-cautions.ts';
import type { Dose } from './dose.ts';
import {
  conflictCautions,
  type EarlierDose,
  type Rest,
  repeatCautions,
  unknownMedicineCautions,
} from './repeats.ts';
import { workedCautions } from './worked-caution.ts';

/** `stop` cannot be passed at the screen, `ask` is accepted by a held press and recorded, `note` is read. */
export type CautionStrength = 'stop' | 'ask' | 'note';

/** Every reason the kiosk may hesitate; the words for each are the screen's. */
export const CAUTION_CODES = [
  'not-kept',
  'species-not-covered',
  'presentation-not-covered',
  'not-approved',
  'jug-past-use-by',
  'jug-empty',
  'jug-too-little',
  'no-syringe',
  'same-active-today',
  'unanswered-offer',
  'top-up',
  'repeat-too-soon',
  'unknown-medicine-given',
  'weight-outside-species',
  'weight-pounds-for-kilograms',
  'weight-far-from-last',
  'weight-changed',
  'named-late',
  'too-young',
  'age-unknown',
  'too-light',
  'early-pregnancy',
  'breeding-unknown',
  'not-in-milk',
  'not-for-dairy',
  'conflict-given',
  'conflict-window',
  'milk-time-unknown',
  'milk-not-for-people',
  'interval-crosses-ceiling',
  'interval-crosses-floor',
  'above-target',
  'below-target',
  'clock-untrusted',
  'scale-unchecked',
  'scale-check-failed',
  'extra-label',
  'test-resistant',
  'test-low-resistant',
] as const;
/** One of {@link CAUTION_CODES}. */
export type CautionCode = (typeof CAUTION_CODES)[number];

/** One reason to hesitate, with the numbers its words need. */
export interface Caution {
  readonly code: CautionCode;
  readonly strength: CautionStrength;
  readonly values: Readonly<Record<string, number>>;
}

/** What makes this visit of the animal doubtful. */
export interface VisitDoubts {
  /** Whether an offer for this animal ended without an answer. */
  readonly unanswered: boolean;
  /** Whether the animal was named only after it had been weighed and had left. */
  readonly namedLate: boolean;
}

/** All that the cautions look at. */
export interface CautionInput {
  readonly animal: Animal;
  readonly weight: Held;
  readonly jug: Jug;
  readonly formulary: Formulary;
  /** Whether the medicine has a rule for the species, and for what is in hand. */
  readonly covered: 'yes' | 'no' | 'other-presentation';
  /** `null` where there is no rule, or none whose rate is known. */
  readonly regimen: RegimenInForce | null;
  /** `null` where nobody has approved the rule as it stands. */
  readonly approval: Approval | null;
  /** `null` where no dose could be worked out or measured. */
  readonly dose: Dose | null;
  /** Earlier doses of this animal in the order they were given, as they stand after corrections. */
  readonly earlier: readonly EarlierDose[];
  /** What is left of a part dose and may be topped up now; the dose is then no more than it. */
  readonly rest: Rest | null;
  readonly visit: VisitDoubts;
  /** The checks of the platform this weight came from. */
  readonly scale: ScaleChecking;
  /** What reduction tests told of medicines here. */
  readonly proven: readonly Proven[];
  /** Milliseconds since 1970. */
  readonly wallMs: number;
  /** The board's running time, where it is known. */
  readonly board?: BoardTime | undefined;
  readonly clockTrusted: boolean;
  /** Whether the disk takes records: a dose that could not be logged must not be given. */
  readonly diskKeeps: boolean;
}

/** A measured dose below or above these shares of the target is asked about (our own guards). */
const BELOW_TARGET = 0.9;
const ABOVE_TARGET = 1.1;

/** Every caution that applies, stops first, then asks, then notes. */
export function cautionsFor(input: CautionInput): Caution[] {
  const all = [
    ...(input.diskKeeps ? [] : [caution('not-kept', 'stop')]),
    ...jugCautions(input),
    ...ruleCautions(input),
    ...repeatCautions(input),
    ...unknownMedicineCautions(input),
    ...conflictCautions(input),
    ...(input.regimen === null ? [] : limitCautions(input.regimen.limits, input)),
    ...weightCautions(input),
    ...milkCautions(input),
    ...doseCautions(input),
    ...scaleCautions(input),
    ...workedCautions(input.proven, input.formulary, input.jug.medicineId, input.animal.species),
  ];
  const order: Record<CautionStrength, number> = { stop: 0, ask: 1, note: 2 };
  return all.sort((a, b) => order[a.strength] - order[b.strength]);
}

function caution(code: CautionCode, strength: CautionStrength, values: Caution['values'] = {}): Caution {
  return { code, strength, values };
}

function jugCautions({ jug, dose, wallMs, clockTrusted }: CautionInput): Caution[] {
  const life = jugLife(jug, wallMs);
  const left = remaining(jug).value;
  if (life === 'empty' || life === 'discarded') return [caution('jug-empty', 'stop')];
  if (life === 'past-use-by' && clockTrusted)
    return [caution('jug-past-use-by', 'stop', { useByMs: jug.useByMs })];
  if (dose !== null && dose.plan.total.value > left)
    return [caution('jug-too-little', 'stop', { leftMl: left })];
  return [];
}

function ruleCautions({ covered, regimen, approval, dose }: CautionInput): Caution[] {
  if (covered === 'no') return [caution('species-not-covered', 'stop')];
  if (covered === 'other-presentation') return [caution('presentation-not-covered', 'stop')];
  if (regimen === null || approval === null) return [caution('not-approved', 'stop')];
  const found: Caution[] = [];
  if (dose === null) found.push(caution('no-syringe', 'stop'));
  if (regimen.use === 'extra-label') found.push(caution('extra-label', 'note'));
  return found;
}

function weightCautions({ animal, weight, visit, wallMs }: CautionInput): Caution[] {
  const found: Caution[] = [];
  if (visit.namedLate) found.push(caution('named-late', 'ask', { grams: weight.mass.value }));
  const doubt = doubtOf(animal, weight.mass, wallMs);
  const lastGrams = animal.lastWeight?.mass.value;
  const values = lastGrams === undefined ? {} : { lastGrams };
  if (doubt !== null) found.push(caution(`weight-${doubt}`, 'ask', { grams: weight.mass.value, ...values }));
  if (weight.changedFrom !== null) {
    found.push(
      caution('weight-changed', 'ask', { fromGrams: weight.changedFrom.value, grams: weight.mass.value }),
    );
  }
  return found;
}

function milkCautions({ animal, regimen, approval }: CautionInput): Caution[] {
  if (!animal.inMilk || regimen === null || approval === null) return [];
  if (regimen.milk.kind === 'unknown') return [caution('milk-time-unknown', 'ask')];
  return regimen.milk.kind === 'not-for-people' ? [caution('milk-not-for-people', 'ask')] : [];
}

function doseCautions({ dose, regimen, rest }: CautionInput): Caution[] {
  // The rest of a dose is a part of one that was judged when it was offered.
  if (dose === null || regimen === null || rest !== null) return [];
  const { value, low, high } = dose.delivered;
  const found: Caution[] = [];
  if (high > regimen.ceiling.value) {
    found.push(caution('interval-crosses-ceiling', 'ask', { high, ceiling: regimen.ceiling.value }));
  }
  const floor = regimen.floor?.value ?? null;
  if (floor !== null && low < floor) found.push(caution('interval-crosses-floor', 'ask', { low, floor }));
  const target = regimen.target.value;
  if (value < BELOW_TARGET * target) found.push(caution('below-target', 'ask', { value, target }));
  if (value > ABOVE_TARGET * target) found.push(caution('above-target', 'ask', { value, target }));
  return found;
}

/**
 * A scale that nobody has checked yet is noted, one past its days is asked about, and one that failed, or was left for
 * twice its days, may be set to stop.
 */
function scaleCautions({ scale, wallMs, clockTrusted }: CautionInput): Caution[] {
  const standing = checkStanding(scale, wallMs, clockTrusted);
  const days = scale.everyDays;
  const lastAtMs = scale.last?.atMs ?? 0;
  switch (standing) {
    case 'fresh':
      return [];
    case 'never':
      return [caution('scale-unchecked', 'note', { days })];
    case 'undated':
      return [caution('scale-unchecked', 'ask', { days })];
    case 'due':
      return [caution('scale-unchecked', 'ask', { lastAtMs, days })];
    case 'overdue':
      return [caution('scale-check-failed', scale.stops ? 'stop' : 'ask', { lastAtMs, days })];
    case 'failed':
      return [caution('scale-check-failed', scale.stops ? 'stop' : 'ask', { failedAtMs: lastAtMs })];
    default:
      return unreachable(standing);
  }
}
