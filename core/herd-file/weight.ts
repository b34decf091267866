import { type Mass, type MassUnit, massFrom } from '../quantity/mass.ts';

/** Why a cell is no weight. */
export type WeightFault = 'not-a-number' | 'no-unit' | 'units-clash' | 'not-above-zero';

/** A weight with the unit it was written in, or why not; an empty cell is `null`. */
export type WeightResult =
  | { readonly ok: true; readonly weight: { readonly mass: Mass; readonly unit: MassUnit } | null }
  | { readonly ok: false; readonly why: WeightFault };

const WRITTEN = /^(\d{1,5}(?:[.,]\d{1,4})?)\s*([a-z]*)\.?$/i;
const UNITS: Readonly<Record<string, MassUnit>> = {
  g: 'g',
  kg: 'kg',
  kgs: 'kg',
  lb: 'lb',
  lbs: 'lb',
  oz: 'oz',
};

/** The unit a word stands for, or `null`. */
export function unitNamed(word: string): MassUnit | null {
  return UNITS[word.trim().toLowerCase()] ?? null;
}

/**
 * Reads a cell that holds a weight: "41.5 kg", "91 lb", or a bare number where the column names its unit.
 *
 * A unit is never guessed: without one, or with two that differ, the cell is refused. A comma is a decimal comma, for
 * which no animal is heavy enough to mean thousands: "1,200" is refused.
 */
export function weightCell(cell: string, columnUnit: MassUnit | null): WeightResult {
  const text = cell.trim();
  if (text === '' || text === '-') return { ok: true, weight: null };
  const [, number, word] = WRITTEN.exec(text) ?? [];
  if (number === undefined || word === undefined || /,\d{3}$/.test(number)) {
    return { ok: false, why: 'not-a-number' };
  }
  const written = word === '' ? null : unitNamed(word);
  if (word !== '' && written === null) return { ok: false, why: 'not-a-number' };
  const unit = written ?? columnUnit;
  if (unit === null) return { ok: false, why: 'no-unit' };
  if (written !== null && columnUnit !== null && written !== columnUnit)
    return { ok: false, why: 'units-clash' };
  const value = Number(number.replace(',', '.'));
  return value > 0
    ? { ok: true, weight: { mass: massFrom(value, unit), unit } }
    : { ok: false, why: 'not-above-zero' };
}
