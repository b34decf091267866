import { describe, expect, test } from 'vitest';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { FRESH_ROUND, type RoundEvent, type RoundWorld } from '../../../core/round/state.ts';
import { makeApproval } from '../make/approval.ts';
import { makeJug } from '../make/jug.ts';
import {
  farm,
  offeredRound,
  offerOf,
  phaseAt,
  play,
  TO_VISIT,
  toWeighed,
  wand,
  weighed,
} from '../make/round.ts';
import { makeSyringe } from '../make/syringe.ts';
import { hoursAgo } from '../make/time.ts';

const ON: RoundEvent = { type: 'stepped-on' };

/** The stops that stand against dosing a weighed Anna in this world. */
function stopsIn(over: Partial<RoundWorld>, who = 'anna'): string[] {
  const round = play(FRESH_ROUND, toWeighed(who), (ms) => farm(ms, over));
  const { decision } = phaseAt(round, 'cautions');
  return decision.cautions.filter(({ strength }) => strength === 'stop').map(({ code }) => code);
}

describe('a dose is offered', () => {
  test('with everything in place, bound to animal, weight, jug, rule and syringe', () => {
    const offer = offerOf(offeredRound());
    expect(offer.animal.id).toBe('anna');
    expect(offer.weight.held.mass.value).toBe(40_000);
    expect(offer.jug.id).toBe('jug-7');
    expect(offer.regimen.id).toBe('levamisole-goat');
    expect(offer.approval.regimenId).toBe('levamisole-goat');
    // 40 kg at 12 mg/kg from 49.453 mg/mL is 9.706 mL.
    expect(offer.dose.exact.value).toBeCloseTo(9.7062, 3);
    expect(offer.dose.plan.total.value).toBe(9.8);
  });
});

describe('a dose is not offered', () => {
  test('without a known animal', () => {
    expect(play(FRESH_ROUND, [...TO_VISIT, ON, weighed()]).phase.step).toBe('visit');
  });

  test('without a weight', () => {
    expect(play(FRESH_ROUND, [...TO_VISIT, wand('anna'), ON]).phase.step).toBe('visit');
  });

  test('on a weight that came without a step-on in this visit', () => {
    expect(play(FRESH_ROUND, [...TO_VISIT, wand('anna'), weighed()]).phase.step).toBe('visit');
  });

  test('on a weight held before the jug was in hand', () => {
    const round = play(FRESH_ROUND, [ON, weighed(), ...TO_VISIT, wand('anna')]);
    expect(phaseAt(round, 'visit').visit.weight).toBeNull();
  });

  test('while the platform is not ready, and is once the weight comes with the platform ready', () => {
    const round = play(FRESH_ROUND, toWeighed('anna'), (ms) => farm(ms, { platformReady: false }));
    expect(round.phase.step).toBe('visit');
  });

  test('before the jug in hand is proved', () => {
    const taken = play(FRESH_ROUND, [...TO_VISIT.slice(0, 1), ON, weighed()]);
    expect(taken.phase.step).toBe('prove-jug');
  });

  test('from a jug past its use-by, even if it was proved in time', () => {
    expect(stopsIn({ jugs: [makeJug()] }, 'dot')).toEqual(['not-approved']);
    const expiring = makeJug({ useByMs: hoursAgo(0) + 2 });
    expect(stopsIn({ jugs: [expiring] })).toEqual(['jug-past-use-by']);
  });

  test('from a jug with less in it than the dose', () => {
    const nearlyDry = makeJug({ drawn: millilitres(makeJug().volume.value - 5) });
    expect(stopsIn({ jugs: [nearlyDry] })).toEqual(['jug-too-little']);
  });

  test('by a regimen nobody approved', () => {
    expect(stopsIn({ approvals: [] })).toEqual(['not-approved']);
  });

  test('by an approval that belongs to another species', () => {
    expect(stopsIn({ approvals: [makeApproval({ regimenId: 'levamisole-sheep' })] })).toEqual([
      'not-approved',
    ]);
  });

  test('against the label on the label’s word alone', () => {
    expect(stopsIn({ approvals: [makeApproval({ direction: 'label' })] })).toEqual(['not-approved']);
  });

  test('to a species the medicine has no rule for', () => {
    const cow = {
      ...offerOf(offeredRound()).animal,
      id: 'ella',
      species: 'cattle' as const,
      lastWeight: null,
    };
    const goatsOnly = SHIPPED.map((medicine) => ({
      ...medicine,
      regimens: medicine.regimens.filter(({ species }) => species === 'goat'),
    }));
    expect(stopsIn({ animals: [cow], formulary: goatsOnly }, 'ella')).toEqual(['species-not-covered']);
  });

  test('with no syringe that can measure it', () => {
    expect(stopsIn({ syringes: [] })).toEqual(['no-syringe']);
    expect(stopsIn({ syringes: [makeSyringe(1, 0.01)] })).toEqual(['no-syringe']);
  });
});
