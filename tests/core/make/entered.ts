import type { EnteredBy } from '../../../core/formulary/entered.ts';
import type { EnteredLiquid, EnteredPacket } from '../../../core/formulary/entered-presentation.ts';
import type { EnteredRule } from '../../../core/formulary/entered-rule.ts';

/** Somebody who reads a label off at Shed. */
export const WREN: EnteredBy = { by: 'Wren', on: '2027-04-12' };

/** A packet of 13 g with 11.7 g of active, made up to a US quart. */
export const SMALL_PACKET: EnteredPacket = {
  form: 'powder',
  grossGrams: 13,
  activeGrams: 11.7,
  madeUpTo: { amount: 1, unit: 'US quart' },
  printedMgPerMl: null,
  jugLifeHours: null,
};

/** A bottle that prints both of its strengths. */
export const BOTTLE: EnteredLiquid = {
  form: 'liquid',
  mgPerMl: 45.5,
  percent: 4.55,
  bottleMl: 250,
  openLifeDays: null,
};

/** A rule that prints both of its rates and nothing else. */
export const RULE: EnteredRule = {
  species: 'goat',
  use: 'label',
  presentationId: null,
  route: 'oral drench',
  mgPerKg: 5,
  mgPerLb: 2.3,
  ceiling: null,
  floor: null,
  repeatDays: null,
  meat: { kind: 'unknown' },
  milk: { kind: 'unknown' },
  minAgeDays: null,
  minWeightKg: null,
  pregnancy: null,
  milkers: 'all-may',
};
