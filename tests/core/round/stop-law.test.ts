import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CAUTION_CODES } from '../../../core/dosing/cautions.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { millilitres, usQuarts } from '../../../core/quantity/volume.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import { FRESH_ROUND, type Round, type RoundEvent, type RoundWorld } from '../../../core/round/state.ts';
import { makeAnimal } from '../make/animal.ts';
import { makeEarlier } from '../make/earlier.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { CHECKED } from '../make/scale-check.ts';
import { UP } from '../make/time.ts';
import { later } from '../make/world.ts';

/** What ships, but for goats alone. */
const FOR_GOATS = SHIPPED.map((medicine) => ({
  ...medicine,
  regimens: medicine.regimens.filter(({ species }) => species === 'goat'),
}));

/** A farm where one thing forbids a dose to the only animal there is. */
const STOPS: readonly (readonly [code: (typeof CAUTION_CODES)[number], over: Partial<RoundWorld>])[] = [
  ['species-not-covered', { animals: [makeAnimal({ species: 'cattle' })], formulary: FOR_GOATS }],
  ['not-approved', { approvals: [] }],
  ['no-syringe', { syringes: [] }],
  ['same-active-today', { earlier: [makeEarlier(3)] }],
  ['jug-too-little', { jugs: [makeJug({ drawn: millilitres(usQuarts(1).value - 1) })] }],
  [
    'scale-check-failed',
    {
      scale: {
        ...CHECKED,
        last: { verdict: 'failed', atMs: CHECKED.last?.atMs ?? 0, clockTrusted: true },
        stops: true,
      },
    },
  ],
];

const offerId = fc.nat(60).map((ms) => `id-at-${ms}`);

/** Any event a person, a device or the disk could send, meaningful or not. */
const event: fc.Arbitrary<RoundEvent> = fc.oneof(
  fc.constant<RoundEvent>({ type: 'take-jug', jugId: 'jug-7' }),
  fc.boolean().map((deliberate): RoundEvent => ({ type: 'prove-jug', jugId: 'jug-7', deliberate })),
  fc
    .constantFrom<'wand' | 'screen'>('wand', 'screen')
    .map((via): RoundEvent => ({ type: 'identified', animalId: 'anna', via })),
  fc.constantFrom(...CAUTION_CODES).map((code): RoundEvent => ({ type: 'accept', code })),
  fc
    .record({ offerId, outcome: fc.constantFrom<'whole' | 'part' | 'spat-out'>('whole', 'part', 'spat-out') })
    .map((given): RoundEvent => ({ type: 'give', ...given })),
  offerId.chain((id) => fc.boolean().map((given): RoundEvent => ({ type: 'answer', offerId: id, given }))),
  fc
    .constantFrom<'jugs' | 'syringes' | 'rules'>('jugs', 'syringes', 'rules')
    .map((what): RoundEvent => ({ type: 'world-changed', what })),
  fc.constantFrom<RoundEvent>(
    { type: 'skip', reason: 'later' },
    { type: 'next' },
    { type: 'stepped-on' },
    { type: 'stepped-off' },
    { type: 'platform-blank' },
    { type: 'tick' },
  ),
  fc
    .integer({ min: 36, max: 44 })
    .map((kg): RoundEvent => ({ type: 'held', held: makeHeld(kg, { at: UP }) })),
);

/** The way to a dose, which any other events may stand between. */
const TOWARDS: readonly RoundEvent[] = [
  { type: 'take-jug', jugId: 'jug-7' },
  { type: 'prove-jug', jugId: 'jug-7', deliberate: true },
  { type: 'stepped-on' },
  { type: 'identified', animalId: 'anna', via: 'wand' },
  { type: 'held', held: makeHeld(40) },
];
const day = fc
  .array(fc.array(event, { maxLength: 6 }), { minLength: 6, maxLength: 6 })
  .map((between) => between.flatMap((some, i) => [...some, ...TOWARDS.slice(i, i + 1)]));

describe('a stop cannot be got round, whatever is sent in whatever order', () => {
  test.each(STOPS)('%s', (code, over) => {
    let stood = 0;
    fc.assert(
      fc.property(day, (events) => {
        let round: Round = FRESH_ROUND;
        for (const [ms, each] of events.entries()) {
          const step = reduceRound(round, each, later(ms, { animals: [makeAnimal()], ...over }));
          const stopped = round.phase.step === 'cautions';
          round = step.round;
          if (each.type === 'accept' && each.code === code) {
            expect(step.refused).toBe(stopped ? 'cannot-pass-stop' : 'wrong-state');
          }
          expect(step.effects.map((effect) => effect.do)).not.toContain('store');
          expect(['offered', 'logging', 'logged']).not.toContain(round.phase.step);
          expect(round.unanswered).toEqual([]);
          if (round.phase.step !== 'cautions') continue;
          stood += 1;
          expect(round.phase.decision.cautions).toContainEqual(
            expect.objectContaining({ code, strength: 'stop' }),
          );
        }
      }),
      { numRuns: 300 },
    );
    expect(stood).toBeGreaterThan(50);
  });

  test('the same events on a farm without a stop do lead to doses', () => {
    let offered = 0;
    fc.assert(
      fc.property(day, (events) => {
        let round: Round = FRESH_ROUND;
        for (const [ms, each] of events.entries()) {
          const step = reduceRound(round, each, later(ms, { animals: [makeAnimal()] }));
          round = step.round;
          if (round.phase.step === 'offered') offered += 1;
        }
      }),
      { numRuns: 300 },
    );
    expect(offered).toBeGreaterThan(50);
  });
});
