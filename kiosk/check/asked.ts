import type { CheckView, WeightView } from '../../shared/check.ts';
import type { Place } from '../drawings/known-weight-places.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** A step of the check that waits for a weighing. */
export type WeighingStep = Extract<CheckView, { readonly liveGrams: number | null }>;

/** What a weighing step asks for, and how it is drawn. */
export interface Asked {
  readonly ask: string;
  readonly hint: string;
  readonly next: string;
  readonly place: Place | null;
  readonly load: 'weight' | 'two' | 'bottle';
  /** What of it is to come off. */
  readonly off: 'none' | 'all' | 'second';
}

/** A weight as it is named: "20 kg", "1 L of water". */
export function weightName({ amount, unit }: WeightView, words: Words, show: Show): string {
  const number = show.number(amount);
  return unit === 'L' ? words.check.waterFull(number) : words.check.weight(number, unit);
}

/** What a weighing step asks for. */
export function asked(check: WeighingStep, words: Words, show: Show): Asked {
  const { ask, hint, next } = words.check;
  if (check.step === 'zero') {
    const why = check.restarted ? hint.restarted : hint.zero;
    return { ask: ask.zero, hint: why, next: next.zero, place: null, load: 'weight', off: 'none' };
  }
  const name = weightName(check.weight, words, show);
  const water = check.weight.unit === 'L';
  const load = water ? 'bottle' : 'weight';
  const on = { next: next.on, load, off: 'none' } as const;
  switch (check.step) {
    case 'bottle':
      return { ...on, ask: ask.bottle, hint: hint.bottle, place: 'middle' };
    case 'middle':
      return { ...on, ask: ask.middle(name), hint: water ? hint.middleWater : hint.middle, place: 'middle' };
    case 'off':
      return { ask: ask.off, hint: hint.off, next: next.off, place: 'middle', load, off: 'all' };
    case 'corner':
      return {
        ...on,
        ask: ask.corner(name, words.check.corner[check.corner]),
        hint: hint.corner,
        place: check.corner,
      };
    case 'both': {
      const second = weightName(check.second, words, show);
      return { ...on, ask: ask.both(name, second), hint: hint.both, place: 'middle', load: 'two' };
    }
    case 'down': {
      const second = weightName(check.second, words, show);
      const down = { ask: ask.down(second), hint: hint.down, next: next.off } as const;
      return { ...down, place: 'middle', load: 'two', off: 'second' };
    }
  }
}
