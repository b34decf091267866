import { describe, expect, test } from 'vitest';
import { reduceMixing } from '../../../core/jug/reduce.ts';
import type { MixingEffect, MixingEvent, MixingStep } from '../../../core/jug/state.ts';
import { mixingAt, mixingWorld, ON_BENCH, POURED, QUART_ML } from '../make/mixing.ts';

type Row = Readonly<Record<MixingStep, string>>;

const REFUSED: Row = {
  idle: 'refused wrong-state',
  lot: 'refused wrong-state',
  dilution: 'refused wrong-state',
  water: 'refused wrong-state',
  place: 'refused wrong-state',
  'new-jug': 'refused wrong-state',
  pour: 'refused wrong-state',
  powder: 'refused wrong-state',
  dissolve: 'refused wrong-state',
  label: 'refused wrong-state',
};

/** Every event by its type, and what it comes to at every step with the right thing on the bench. */
const TABLE: Readonly<Record<MixingEvent['type'], readonly [MixingEvent, Row]>> = {
  start: [
    { type: 'start', packetId: 'levamisole-52g' },
    { ...REFUSED, idle: 'dilution' },
  ],
  lot: [
    { type: 'lot', lotId: null },
    { ...REFUSED, lot: 'dilution' },
  ],
  amount: [
    { type: 'amount', amount: { kind: 'packets', count: 2 } },
    { ...REFUSED, dilution: 'dilution' },
  ],
  mode: [
    { type: 'mode', mode: 'add-to' },
    { ...REFUSED, dilution: 'dilution' },
  ],
  look: [
    { type: 'look', perPacketMl: 1500 },
    { ...REFUSED, dilution: 'dilution' },
  ],
  dilution: [
    { type: 'dilution', perPacketMl: QUART_ML, deliberate: false },
    { ...REFUSED, dilution: 'water' },
  ],
  'water-temperature': [
    { type: 'water-temperature', celsius: 20 },
    { ...REFUSED, dilution: 'place', water: 'place' },
  ],
  'jug-placed': [{ type: 'jug-placed' }, { ...REFUSED, place: 'pour', 'new-jug': 'pour' }],
  'jug-is-empty': [
    { type: 'jug-is-empty', vesselId: null, deliberate: true },
    { ...REFUSED, 'new-jug': 'pour + learn B' },
  ],
  poured: [POURED, { ...REFUSED, pour: 'powder' }],
  'powder-in': [{ type: 'powder-in', deliberate: false }, REFUSED],
  weighed: [
    { type: 'weighed' },
    {
      idle: 'ignored',
      lot: 'ignored',
      dilution: 'ignored',
      water: 'ignored',
      place: 'ignored',
      'new-jug': 'ignored',
      pour: 'pour',
      powder: 'dissolve',
      dissolve: 'ignored',
      label: 'ignored',
    },
  ],
  dissolved: [{ type: 'dissolved' }, { ...REFUSED, dissolve: 'label' }],
  'in-service': [{ type: 'in-service' }, { ...REFUSED, label: 'ignored + store jug-new' }],
  stored: [
    { type: 'stored' },
    {
      idle: 'ignored',
      lot: 'ignored',
      dilution: 'ignored',
      water: 'ignored',
      place: 'ignored',
      'new-jug': 'ignored',
      pour: 'ignored',
      powder: 'ignored',
      dissolve: 'ignored',
      label: 'idle',
    },
  ],
  cancel: [
    { type: 'cancel' },
    {
      idle: 'refused wrong-state',
      lot: 'idle',
      dilution: 'idle',
      water: 'idle',
      place: 'idle',
      'new-jug': 'idle',
      pour: 'idle',
      powder: 'idle',
      dissolve: 'idle',
      label: 'idle',
    },
  ],
};

const STEPS = Object.keys(REFUSED) as MixingStep[];

function inWords(effect: MixingEffect): string {
  if (effect.do === 'take-stock') return `take ${effect.pieces.value} of ${effect.lotId}`;
  return effect.do === 'store-jug' ? `store ${effect.jug.id}` : `learn ${effect.vessel.letter}`;
}

describe.each(Object.values(TABLE))('$type', (event, row) => {
  test.each(STEPS.map((step) => [step, row[step]] as const))('at %s: %s', (step, expected) => {
    const before = mixingAt(step);
    const { mixing, effects, refused } = reduceMixing(before, event, mixingWorld(ON_BENCH[event.type]));
    const same = JSON.stringify(mixing) === JSON.stringify(before);
    if (refused !== null) expect(mixing).toBe(before);
    const first = refused === null ? (same ? 'ignored' : mixing.step) : `refused ${refused}`;
    expect([first, ...effects.map(inWords)].join(' + ')).toBe(expected);
  });
});
