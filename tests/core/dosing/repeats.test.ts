import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decideDose } from '../../../core/dosing/decide.ts';
import type { EarlierDose } from '../../../core/dosing/repeats.ts';
import { LEVAMISOLE } from '../../../core/formulary/levamisole.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { Medicine } from '../../../core/medicine/medicine.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import type { RoundWorld } from '../../../core/round/state.ts';
import { makeAnimal } from '../make/animal.ts';
import { makeApproval } from '../make/approval.ts';
import { NO_DOUBTS } from '../make/caution-input.ts';
import { makeEarlier } from '../make/earlier.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { makeWorld } from '../make/world.ts';

const THIAMINE_JUG = makeJug({ id: 'b', medicineId: 'thiamine', packetId: 'own', strength: mgPerMl(200) });
const BY_THE_VET = makeApproval({ regimenId: 'thiamine-goat', targetMgPerKg: 10, figures: null });

function thiamine(earlier: readonly EarlierDose[], over: Partial<RoundWorld> = {}) {
  const world = makeWorld({ earlier, approvals: [BY_THE_VET], ...over });
  return decideDose(makeAnimal(), makeHeld(), THIAMINE_JUG, NO_DOUBTS, world);
}
const strengthOf = (decision: ReturnType<typeof decideDose>, code: string) =>
  decision.cautions.find((caution) => caution.code === code)?.strength;

describe('a rule for several doses a day', () => {
  const earlier = (hours: number) => makeEarlier(hours, { medicineId: 'thiamine' });

  test('stops inside its own wait and lets the next dose follow just after it', () => {
    expect(strengthOf(thiamine([earlier(5.999)]), 'same-active-today')).toBe('stop');
    const after = thiamine([earlier(6)]);
    expect(after.dose).not.toBeNull();
    expect(after.cautions.map(({ code }) => code)).not.toContain('same-active-today');
    expect(after.cautions.map(({ code }) => code)).not.toContain('repeat-too-soon');
  });

  test('counts from the last of several, not from the first', () => {
    expect(strengthOf(thiamine([earlier(13), earlier(7), earlier(1)]), 'same-active-today')).toBe('stop');
  });

  test('a clock set back does not shorten the wait', () => {
    expect(strengthOf(thiamine([earlier(-3)]), 'same-active-today')).toBe('stop');
  });

  test('says from when the next may follow', () => {
    const dose = earlier(1);
    const stop = thiamine([dose]).cautions.find(({ code }) => code === 'same-active-today');
    expect(stop?.values).toMatchObject({ nextAtMs: dose.givenAtMs + 6 * 3_600_000, repeatDays: 0.25 });
  });

  test('does not shorten the wait of the drench given beside it', () => {
    const both = [makeEarlier(7), makeEarlier(7, { medicineId: 'thiamine' })];
    const world = makeWorld({ earlier: both });
    const drench = decideDose(makeAnimal(), makeHeld(), makeJug(), NO_DOUBTS, world);
    expect(strengthOf(drench, 'same-active-today')).toBe('stop');
    expect(strengthOf(thiamine(both), 'same-active-today')).toBeUndefined();
  });

  test('with a clock nobody trusts is asked about like every other', () => {
    expect(strengthOf(thiamine([earlier(1)], { clockTrusted: false }), 'clock-untrusted')).toBe('ask');
  });

  test('of a species without a source for it is still a day', () => {
    const sheep = makeAnimal({ species: 'sheep' });
    const approvals = [{ ...BY_THE_VET, regimenId: 'thiamine-sheep' }];
    const world = makeWorld({ earlier: [earlier(7)], approvals });
    expect(
      strengthOf(decideDose(sheep, makeHeld(), THIAMINE_JUG, NO_DOUBTS, world), 'same-active-today'),
    ).toBe('stop');
  });

  test('cannot be written for a drench, nor for more than one dose an hour', () => {
    const often = (value: number) => ({ value, evidence: 'entered', source: 'a file of the test' }) as const;
    const again = (medicine: Medicine, value: number) =>
      Medicine.safeParse({
        ...medicine,
        regimens: medicine.regimens.map((regimen) => ({ ...regimen, repeatAfterDays: often(value) })),
      });
    expect(again(LEVAMISOLE, 0.5).error?.issues[0]?.message).toMatch(/never a drench/);
    expect(again(LEVAMISOLE, 1).success).toBe(true);
    const [own] = SHIPPED.filter(({ id }) => id === 'thiamine');
    if (own === undefined) throw new Error('thiamine does not ship');
    expect(again(own, 1 / 24).success).toBe(true);
    expect(again(own, 1 / 25).error?.issues[0]?.message).toMatch(/one dose an hour/);
  });
});

/** What ships, with the rest of a part dose of levamisole allowed to follow. */
const TOPPING_UP = SHIPPED.map((medicine) => ({
  ...medicine,
  regimens: medicine.regimens.map((regimen) => ({ ...regimen, topUp: true })),
}));
const part = (restMg: number, over: Partial<EarlierDose> = {}): EarlierDose =>
  makeEarlier(0.1, {
    rest: { regimenId: 'levamisole-goat', active: { unit: 'mg', value: restMg } },
    ...over,
  });

function levamisole(earlier: readonly EarlierDose[], over: Partial<RoundWorld> = {}, kg = 40) {
  const approvals = [makeApproval({ figures: null })];
  const world = makeWorld({ earlier, formulary: TOPPING_UP, approvals, ...over });
  return decideDose(makeAnimal(), makeHeld(kg), makeJug(), NO_DOUBTS, world);
}

describe('the rest of a part dose', () => {
  test('under a rule that says nothing of it is a stop, whatever stayed in the syringe', () => {
    const found = levamisole([part(200)], { formulary: SHIPPED });
    expect(strengthOf(found, 'same-active-today')).toBe('stop');
    expect(strengthOf(found, 'top-up')).toBeUndefined();
  });

  test('under a rule that allows it is asked about, and is the rest', () => {
    const found = levamisole([part(200)]);
    expect(strengthOf(found, 'top-up')).toBe('ask');
    expect(found.cautions.filter(({ strength }) => strength === 'stop')).toEqual([]);
    expect(found.dose?.exact.value).toBeCloseTo(200 / makeJug().strength.value, 9);
  });

  test('is never more than the rest, whatever the weight, the strength and the syringes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 700, noNaN: true }),
        fc.double({ min: 4, max: 120, noNaN: true }),
        (restMg, kg) => {
          const { dose } = levamisole([part(restMg)], {}, kg);
          if (dose === null) return;
          expect(dose.plan.total.value * makeJug().strength.value).toBeLessThanOrEqual(restMg + 1e-9);
        },
      ),
      { numRuns: 300 },
    );
  });

  test.each<[string, readonly EarlierDose[], Partial<RoundWorld>]>([
    ['nobody knows what stayed in the syringe', [makeEarlier(0.1)], {}],
    ['nothing stayed in it', [part(0)], {}],
    ['a whole dose of the active came after it', [part(200), makeEarlier(0.05)], {}],
    ['the rest was given already', [part(200), makeEarlier(0.05)], {}],
    [
      'it was a dose by another rule',
      [part(200, { rest: { regimenId: 'other', active: { unit: 'mg', value: 200 } } })],
      {},
    ],
  ])('is a stop where %s', (_, earlier, over) => {
    expect(strengthOf(levamisole(earlier, over), 'same-active-today')).toBe('stop');
  });

  test('a day later is a dose of its own, asked about as any other', () => {
    const found = levamisole([part(200, { givenAtMs: makeEarlier(24).givenAtMs })]);
    expect(strengthOf(found, 'top-up')).toBeUndefined();
    expect(strengthOf(found, 'repeat-too-soon')).toBe('ask');
    expect(found.dose?.plan.total.value).toBe(9.8);
  });

  test('of another animal is none of this one', () => {
    const found = levamisole([part(200, { animalId: 'bella' })]);
    expect(strengthOf(found, 'top-up')).toBeUndefined();
    expect(found.dose?.plan.total.value).toBe(9.8);
  });

  test('too small for every syringe is not measured', () => {
    expect(strengthOf(levamisole([part(0.5)]), 'no-syringe')).toBe('stop');
  });

  test('with a clock nobody trusts is not known to be of today', () => {
    const found = levamisole([part(200)], { clockTrusted: false });
    expect(strengthOf(found, 'top-up')).toBeUndefined();
    expect(strengthOf(found, 'clock-untrusted')).toBe('ask');
  });
});

test('cautions of an unanswered offer stand before any rest', () => {
  const world = makeWorld({
    earlier: [part(200)],
    formulary: TOPPING_UP,
    approvals: [makeApproval({ figures: null })],
  });
  const found = decideDose(makeAnimal(), makeHeld(), makeJug(), { ...NO_DOUBTS, unanswered: true }, world);
  expect(found.cautions[0]?.code).toBe('unanswered-offer');
});

describe('a clock that was set since the last dose', () => {
  const { now } = makeWorld();
  const MINUTE = 60_000;
  const at = (sinceMs: number) => ({ start: 'this', sinceMs });
  const given = (over: Partial<EarlierDose>) => makeEarlier(0, { board: at(10 * MINUTE), ...over });
  /** What a drench now says of one dose before it, 20 min of the board's time after it. */
  function drench(dose: EarlierDose, over: Partial<RoundWorld> = {}) {
    const world = makeWorld({ earlier: [dose], now: { ...now, board: at(30 * MINUTE) }, ...over });
    return decideDose(makeAnimal(), makeHeld(), makeJug(), NO_DOUBTS, world);
  }

  test.each([
    ['a day on', -25 * 60 * MINUTE],
    ['forty years on', -40 * 365 * 24 * 60 * MINUTE],
    ['two hours back', 2 * 60 * MINUTE],
    ['not at all', -20 * MINUTE],
  ])('%s leaves the dose 20 min old, trusted or not', (_, byDate) => {
    for (const clockTrusted of [true, false]) {
      const decision = drench(given({ givenAtMs: now.wallMs + byDate, clockTrusted }), { clockTrusted });
      const stop = decision.cautions.find(({ code }) => code === 'same-active-today');
      expect(stop).toMatchObject({
        strength: 'stop',
        values: {
          lastGivenAtMs: now.wallMs - 20 * MINUTE,
          nextAtMs: now.wallMs - 20 * MINUTE + 24 * 60 * MINUTE,
        },
      });
    }
  });

  test('tells nothing of a dose before the board was started anew', () => {
    const before = given({ board: { start: 'before', sinceMs: 10 * MINUTE }, clockTrusted: false });
    const decision = drench(before, { clockTrusted: false });
    expect(strengthOf(decision, 'same-active-today')).toBeUndefined();
    expect(strengthOf(decision, 'clock-untrusted')).toBe('ask');
  });

  test('does not make a board that ran for two days forget them', () => {
    const late = { ...now, board: at(10 * MINUTE + 49 * 60 * MINUTE) };
    const decision = drench(given({ givenAtMs: now.wallMs, clockTrusted: false }), { now: late });
    expect(strengthOf(decision, 'same-active-today')).toBeUndefined();
  });
});
