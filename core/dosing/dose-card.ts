import { massIn } from '../quantity/mass.ts';
import { type Advice, adviceFor } from './advice.ts';
import type { Dose, DoseInput } from './dose.ts';
import { propagate } from './propagation.ts';
import type { Syringe } from './syringe.ts';

/** What a dose rests on, and what may be wrong with it. */
export type Cause = 'weight' | 'strength' | 'syringe';

/** One cause of doubt on the card. */
export interface CardPart {
  readonly of: Cause;
  /** How far it may be off, either way, as a share of itself (k = 2). */
  readonly off: number;
  /** How far that moves the rate delivered, either way, in mg/kg (k = 2). */
  readonly moves: number;
  /** Its part of the doubt of the whole; the parts add to 1, or are all 0. */
  readonly share: number;
}

/** Why this volume: everything a dose rests on, what leads its doubt, and what would help. */
export interface DoseCard {
  /** In the order weight, strength, syringe. */
  readonly parts: readonly CardPart[];
  /** The cause of more doubt than any other. */
  readonly leads: Cause;
  readonly passesCeiling: boolean;
  /** `null` where no source gives a floor. */
  readonly passesFloor: boolean | null;
  readonly advice: readonly Advice[];
}

/** The card of a dose: its budget by propagation through volume times strength over weight. `mixedHere` is not so for a bottle. */
export function doseCard(
  input: DoseInput,
  dose: Dose,
  onHand: readonly Syringe[],
  mixedHere: boolean,
): DoseCard {
  const { weight, regimen, jug } = input;
  const normal = (standard: number) => ({ shape: 'normal', standard }) as const;
  const { total, relative } = dose.plan;
  const budget = propagate<Cause>(
    [
      {
        of: 'weight',
        value: massIn(weight.mass, 'kg'),
        spread: normal(massIn(weight.uncertainty, 'kg')),
      },
      {
        of: 'strength',
        value: jug.strength.value,
        spread: normal(jug.relative * jug.strength.value),
      },
      { of: 'syringe', value: total.value, spread: normal(relative * total.value) },
    ],
    ([kilograms = 1, strength = 0, volume = 0]) => (volume * strength) / kilograms,
  );
  const off = [weight.uncertainty.value / weight.mass.value, jug.relative, relative];
  const parts = budget.parts.map(({ of, uncertainty, share }, i) => ({
    of,
    off: 2 * (off[i] ?? 0),
    moves: 2 * uncertainty,
    share,
  }));
  const { low, high } = dose.delivered;
  return {
    parts,
    leads: parts.reduce((most, part) => (part.share > most.share ? part : most)).of,
    passesCeiling: high > regimen.ceiling.value,
    passesFloor: regimen.floor === null ? null : low < regimen.floor.value,
    advice: adviceFor(input, dose, onHand, mixedHere),
  };
}
