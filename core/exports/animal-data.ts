import type { BodyCondition } from '../worms/scores.ts';

/** An animal as an outside system knows it. */
export interface OutsideAnimal {
  /** Its electronic tag, 15 digits; `null` where it wears none. */
  readonly tag: string | null;
  readonly id: string;
}

/** What all events carry. Times are milliseconds since 1970. */
export interface EventCore {
  readonly id: string;
  readonly atMs: number;
  readonly animal: OutsideAnimal;
  readonly by: string;
  /** When it was last changed, if only by a correction beside it. */
  readonly changedAtMs: number;
  /** Whether a correction took it back: it is told as deleted, and stays in the day book. */
  readonly takenBack: boolean;
}

/** A weight for others to read. */
export interface WeightForExport extends EventCore {
  readonly kilograms: number;
  /** The step of the scale in kilograms; `null` where not known. */
  readonly resolutionKilograms: number | null;
  readonly method: 'scale' | 'girth' | 'guess' | 'imported';
  readonly hoursOffFeed: number | null;
}

/** A treatment for others to read: what the exchange standard has room for. */
export interface TreatmentForExport extends EventCore {
  /** The active and its presentation in words. */
  readonly medicine: string;
  readonly millilitres: number;
  readonly route: string;
  readonly lot: string | null;
  /** Day the lot expires, milliseconds since 1970. */
  readonly expiresAtMs: number | null;
  /** When meat and milk may be used again; `null` where that is not known, which is not told as a date. */
  readonly meatClearAtMs: number | null;
  readonly milkClearAtMs: number | null;
  /** Strength, rate, packet and water, which the standard has no fields for. */
  readonly comment: string | null;
}

/** A body condition score for others to read. */
export interface BodyScoreForExport extends EventCore {
  readonly score: BodyCondition;
}

/** A JSON value that is ready to be written. */
export type Json = { readonly [key: string]: Json } | readonly Json[] | string | number | boolean;

const METHOD = { scale: 'LoadCell', girth: 'Girth', guess: 'Assessed', imported: null } as const;
/** What this kiosk is called where a source must be named. */
const SOURCE = 'byreside';

/**
 * A weight as a `WeightEvent` of the open exchange standard ICAR ADE, version 1.3. Throws `RangeError` for a weight that
 * is not a number from 0.
 */
export function weightEvent(weight: WeightForExport): Json {
  if (!(weight.kilograms >= 0 && Number.isFinite(weight.kilograms))) {
    throw new RangeError(`a weight of ${weight.kilograms} kg cannot be exported`);
  }
  const { resolutionKilograms, hoursOffFeed } = weight;
  return {
    ...coreOf('WeightEvent', weight),
    weight: {
      measurement: weight.kilograms,
      units: 'KGM',
      ...given('method', METHOD[weight.method]),
      ...given('resolution', resolutionKilograms),
    },
    ...given('timeOffFeed', hoursOffFeed),
  };
}

/** A treatment as a `TreatmentEvent` of the same standard. A clear time that is not known is left out, never made up. */
export function treatmentEvent(treatment: TreatmentForExport): Json {
  const { medicine, millilitres, route, lot, expiresAtMs, meatClearAtMs, milkClearAtMs, comment } = treatment;
  const until = (productType: string, atMs: number | null): Json[] =>
    atMs === null ? [] : [{ productType, endDate: utc(atMs) }];
  return {
    ...coreOf('TreatmentEvent', treatment),
    medicine: { name: medicine },
    procedure: route,
    dose: { doseQuantity: millilitres, doseUnits: 'MLT' },
    ...given(
      'batches',
      lot === null ? null : [{ identifier: lot, ...given('expiryDate', utcOrNull(expiresAtMs)) }],
    ),
    withdrawals: [...until('Meat', meatClearAtMs), ...until('Milk', milkClearAtMs)],
    ...given('comment', comment),
  };
}

/**
 * A body condition as a `ConformationScoreEvent` of the same standard. Eyelid, soiling, jaw and coat have no trait there
 * and are exported as CSV.
 */
export function bodyScoreEvent(score: BodyScoreForExport): Json {
  return {
    ...coreOf('ConformationScoreEvent', score),
    score: score.score,
    traitScored: 'BodyConditionScore',
    method: 'Manual',
  };
}

function coreOf(resourceType: string, event: EventCore): { readonly [key: string]: Json } {
  const { id, atMs, animal, by, changedAtMs, takenBack } = event;
  return {
    resourceType,
    meta: {
      source: SOURCE,
      sourceId: id,
      modified: utc(changedAtMs),
      ...(takenBack ? { isDeleted: true } : {}),
    },
    id,
    eventDateTime: utc(atMs),
    animal:
      animal.tag === null
        ? { scheme: `${SOURCE}.animal`, id: animal.id }
        : { scheme: 'std.iso.11785', id: animal.tag },
    ...given('responsible', by === '' ? null : by),
  };
}

/** RFC 3339 in UTC with Z and whole seconds, as the standard asks. */
function utc(atMs: number): string {
  return new Date(atMs).toISOString().replace(/\.\d{3}Z$/, 'Z');
}

function utcOrNull(atMs: number | null): string | null {
  return atMs === null ? null : utc(atMs);
}

/** The field where there is something to say, else no field at all. */
function given(field: string, value: Json | null): { readonly [key: string]: Json } {
  return value === null ? {} : { [field]: value };
}
