import { describe, expect, test } from 'vitest';
import {
  CAUTION_CODES,
  type CautionCode,
  type CautionInput,
  type CautionStrength,
  cautionsFor,
} from '../../../core/dosing/cautions.ts';
import { LEVAMISOLE } from '../../../core/formulary/levamisole.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { type Limits, NO_LIMITS } from '../../../core/medicine/limits.ts';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import type { Proven } from '../../../core/reduction/proven.ts';
import { makeAnimal } from '../make/animal.ts';
import { makeApproval } from '../make/approval.ts';
import { makeCautionInput, NO_DOUBTS } from '../make/caution-input.ts';
import { makeEarlier } from '../make/earlier.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { makeRegimen } from '../make/regimen.ts';
import { CHECKED } from '../make/scale-check.ts';
import { hoursAgo } from '../make/time.ts';

type Over = Partial<CautionInput>;

/** What provokes a caution, how strong it must be, and the nearest thing that must not provoke it. */
interface Case {
  readonly strength: CautionStrength;
  readonly provoke: Over;
  readonly quiet: Over;
}

const dosedHoursAgo = (hours: number, medicineId = 'levamisole'): Over => ({
  earlier: [makeEarlier(hours, { medicineId })],
});
const lastWeighed = (kg: number): Over => ({
  animal: makeAnimal({ lastWeight: { mass: kilograms(kg), atMs: hoursAgo(500) } }),
});
const unsureBy = (kg: number): Over => ({ weight: makeHeld(40, { uncertainty: grams(kg * 1000) }) });
const checkedDaysAgo = (days: number, over: Partial<CautionInput['scale']> = {}): Over => ({
  scale: {
    ...CHECKED,
    last: { verdict: 'passed', atMs: hoursAgo(24 * days), clockTrusted: true },
    ...over,
  },
});
/** What is said of every dose of levamisole to a goat. */
const NOTES = [['extra-label', 'note']];
const least = (value: number) => ({ value, evidence: 'own-guard', source: 'a limit of the test' }) as const;
const LEFT_OUT = { why: 'left out', evidence: 'primary', source: 'a label of the test' } as const;
const under = (limits: Partial<Limits>) => makeRegimen({ limits: { ...NO_LIMITS, ...limits } });
const NOT_NEWLY_BRED = under({ pregnancy: { afterBredDays: least(45), afterMalesDays: least(45) } });
const WITH_ORGANOPHOSPHATE = [
  ...SHIPPED,
  { ...LEVAMISOLE, id: 'dip', active: 'an organophosphate', group: 'organophosphate' } as const,
];
const withMilkTime = makeRegimen({
  milk: { kind: 'hours', hours: 96, evidence: 'directed', source: 'the vet of the test' },
});
const REST = { regimenId: 'levamisole-goat', active: { unit: 'mg', value: 200 } } as const;
const inMilk: Over = { animal: makeAnimal({ inMilk: true }) };
const sheepInMilk: Over = {
  ...inMilk,
  regimen: makeRegimen({}, 'levamisole-sheep'),
  approval: makeApproval({ regimenId: 'levamisole-sheep' }),
};
const measuredAt = (value: number): Over => {
  const { dose } = makeCautionInput();
  return dose === null ? {} : { dose: { ...dose, delivered: { ...dose.delivered, value } } };
};

/** What is told once, with the jug in hand: see the tests of the proof. */
type Judged = Exclude<CautionCode, 'conflict-window'>;
const JUDGED = CAUTION_CODES.filter((code): code is Judged => code !== 'conflict-window');

const tested = (verdict: Proven['verdict'], over: Partial<Proven> = {}): Over => ({
  proven: [
    {
      testId: 't',
      medicineId: 'levamisole',
      species: 'goat',
      verdict,
      reduction: 0.62,
      atMs: hoursAgo(2000),
      ...over,
    },
  ],
});

const CASES: Readonly<Record<Judged, Case>> = {
  'not-kept': { strength: 'stop', provoke: { diskKeeps: false }, quiet: { clockTrusted: false } },
  'species-not-covered': {
    strength: 'stop',
    provoke: { regimen: null, approval: null, dose: null },
    quiet: { approval: null },
  },
  'presentation-not-covered': {
    strength: 'stop',
    provoke: { covered: 'other-presentation', regimen: null, approval: null, dose: null },
    quiet: {},
  },
  'test-resistant': {
    strength: 'ask',
    provoke: tested('resistant'),
    quiet: tested('resistant', { species: 'sheep' }),
  },
  'test-low-resistant': {
    strength: 'note',
    provoke: tested('low-resistant'),
    quiet: tested('susceptible'),
  },
  'not-approved': { strength: 'stop', provoke: { approval: null }, quiet: {} },
  'jug-past-use-by': {
    strength: 'stop',
    provoke: { jug: makeJug({ useByMs: hoursAgo(0) }) },
    quiet: { jug: makeJug({ useByMs: hoursAgo(0) + 1 }) },
  },
  'jug-empty': {
    strength: 'stop',
    provoke: { jug: makeJug({ drawn: makeJug().volume }) },
    quiet: { jug: makeJug({ drawn: millilitres(900) }) },
  },
  'jug-too-little': {
    strength: 'stop',
    provoke: { jug: makeJug({ drawn: millilitres(946.352946 - 9.6) }) },
    quiet: { jug: makeJug({ drawn: millilitres(946.352946 - 9.8) }) },
  },
  'no-syringe': { strength: 'stop', provoke: { dose: null }, quiet: {} },
  'same-active-today': { strength: 'stop', provoke: dosedHoursAgo(23.99), quiet: dosedHoursAgo(24) },
  'unanswered-offer': { strength: 'stop', provoke: { visit: { ...NO_DOUBTS, unanswered: true } }, quiet: {} },
  'named-late': { strength: 'ask', provoke: { visit: { ...NO_DOUBTS, namedLate: true } }, quiet: {} },
  'top-up': { strength: 'ask', provoke: { ...dosedHoursAgo(1), rest: REST }, quiet: dosedHoursAgo(1) },
  'repeat-too-soon': {
    strength: 'ask',
    provoke: dosedHoursAgo(14 * 24 - 0.01),
    quiet: dosedHoursAgo(14 * 24),
  },
  'unknown-medicine-given': {
    strength: 'ask',
    provoke: { earlier: [makeEarlier(14 * 24 - 0.01, { medicineId: 'own-of-another-kiosk' })] },
    quiet: { earlier: [makeEarlier(14 * 24, { medicineId: 'own-of-another-kiosk' })] },
  },
  'weight-outside-species': {
    strength: 'ask',
    provoke: { ...lastWeighed(170), weight: makeHeld(160) },
    quiet: { ...lastWeighed(150), weight: makeHeld(158) },
  },
  'weight-pounds-for-kilograms': {
    strength: 'ask',
    provoke: lastWeighed(40 * 2.2046),
    quiet: lastWeighed(45),
  },
  'weight-far-from-last': { strength: 'ask', provoke: lastWeighed(29), quiet: lastWeighed(38) },
  'weight-changed': {
    strength: 'ask',
    provoke: { weight: makeHeld(40, { changedFrom: kilograms(24) }) },
    quiet: { weight: makeHeld(40, { changedFrom: null }) },
  },
  'too-young': {
    strength: 'stop',
    provoke: {
      regimen: under({ minAgeDays: least(122) }),
      animal: makeAnimal({ bornAtMs: hoursAgo(24 * 121.9) }),
    },
    quiet: {
      regimen: under({ minAgeDays: least(122) }),
      animal: makeAnimal({ bornAtMs: hoursAgo(24 * 122) }),
    },
  },
  'age-unknown': {
    strength: 'ask',
    provoke: { regimen: under({ minAgeDays: least(122) }), animal: makeAnimal({ class: 'young' }) },
    quiet: { regimen: under({ minAgeDays: least(122) }) },
  },
  'too-light': {
    strength: 'stop',
    provoke: { regimen: under({ minWeightKg: least(40.1) }) },
    quiet: { regimen: under({ minWeightKg: least(39) }) },
  },
  'early-pregnancy': {
    strength: 'stop',
    provoke: { regimen: NOT_NEWLY_BRED, animal: makeAnimal({ bredAtMs: hoursAgo(24 * 44.9) }) },
    quiet: { regimen: NOT_NEWLY_BRED, animal: makeAnimal({ bredAtMs: hoursAgo(24 * 45) }) },
  },
  'breeding-unknown': {
    strength: 'ask',
    provoke: { regimen: NOT_NEWLY_BRED },
    quiet: { regimen: NOT_NEWLY_BRED, animal: makeAnimal({ malesRemovedAtMs: hoursAgo(24 * 45) }) },
  },
  'not-in-milk': {
    strength: 'stop',
    provoke: { ...inMilk, regimen: under({ notInMilk: LEFT_OUT }) },
    quiet: { regimen: under({ notInMilk: LEFT_OUT }) },
  },
  'not-for-dairy': {
    strength: 'note',
    provoke: { regimen: under({ notDairy: LEFT_OUT }) },
    quiet: { regimen: under({ notDairy: LEFT_OUT }), animal: makeAnimal({ class: 'male' }) },
  },
  'conflict-given': {
    strength: 'stop',
    provoke: { formulary: WITH_ORGANOPHOSPHATE, ...dosedHoursAgo(14 * 24 - 0.01, 'dip') },
    quiet: { formulary: WITH_ORGANOPHOSPHATE, ...dosedHoursAgo(14 * 24, 'dip') },
  },
  'milk-time-unknown': {
    strength: 'ask',
    provoke: inMilk,
    quiet: { ...inMilk, regimen: withMilkTime },
  },
  'milk-not-for-people': {
    strength: 'ask',
    provoke: sheepInMilk,
    quiet: { ...sheepInMilk, animal: makeAnimal({ inMilk: false }) },
  },
  'interval-crosses-ceiling': { strength: 'ask', provoke: unsureBy(7), quiet: unsureBy(6) },
  'interval-crosses-floor': {
    strength: 'ask',
    provoke: { regimen: makeRegimen({ floor: least(11.9) }) },
    quiet: { regimen: makeRegimen({ floor: least(6) }) },
  },
  'above-target': { strength: 'ask', provoke: measuredAt(13.3), quiet: measuredAt(13.1) },
  'below-target': { strength: 'ask', provoke: measuredAt(10.7), quiet: measuredAt(10.9) },
  'clock-untrusted': {
    strength: 'ask',
    provoke: { clockTrusted: false },
    quiet: { clockTrusted: true },
  },
  'scale-unchecked': {
    strength: 'ask',
    provoke: checkedDaysAgo(30.01),
    quiet: checkedDaysAgo(30),
  },
  'scale-check-failed': {
    strength: 'ask',
    provoke: checkedDaysAgo(60.01),
    quiet: checkedDaysAgo(60),
  },
  'extra-label': {
    strength: 'note',
    provoke: {},
    quiet: {
      regimen: makeRegimen({}, 'levamisole-sheep'),
      approval: makeApproval({ regimenId: 'levamisole-sheep' }),
    },
  },
};

function found(over: Over): Map<CautionCode, CautionStrength> {
  return new Map(cautionsFor(makeCautionInput(over)).map(({ code, strength }) => [code, strength]));
}

describe.each(JUDGED)('%s', (code) => {
  const { strength, provoke, quiet } = CASES[code];

  test(`is a ${strength} when provoked`, () => {
    expect(found(provoke).get(code)).toBe(strength);
  });

  test('is silent just this side of it', () => {
    expect(found(quiet).has(code)).toBe(false);
  });
});

describe('cautions', () => {
  test('with everything in order are only the note that the use is extra-label', () => {
    expect([...found({})]).toEqual(NOTES);
  });

  test('stand stops first, then asks, then notes, whatever provoked them', () => {
    for (const first of JUDGED) {
      for (const second of JUDGED) {
        const order = cautionsFor(
          makeCautionInput({
            ...CASES[first].provoke,
            ...CASES[second].provoke,
            visit: { unanswered: true, namedLate: true },
          }),
        ).map(({ strength }) => ({ stop: 0, ask: 1, note: 2 })[strength]);
        expect(order).toEqual([...order].sort((a, b) => a - b));
        expect(order[0]).toBe(0);
      }
    }
  });

  test('carry numbers only, and finite ones', () => {
    for (const { provoke } of Object.values(CASES)) {
      for (const { values } of cautionsFor(makeCautionInput(provoke))) {
        for (const value of Object.values(values)) expect(Number.isFinite(value)).toBe(true);
      }
    }
  });

  test('a poured-away jug stops like an empty one', () => {
    expect(found({ jug: makeJug({ discardedAtMs: hoursAgo(1) }) }).get('jug-empty')).toBe('stop');
  });

  test('another medicine given an hour ago is no repeat', () => {
    expect([...found(dosedHoursAgo(1, 'fenbendazole'))]).toEqual(NOTES);
  });

  test('of several earlier doses the latest counts', () => {
    const earlier = [300, 20, 1].map((hours) => makeEarlier(hours));
    expect(found({ earlier }).get('same-active-today')).toBe('stop');
  });

  test('a jug past its date is no stop while the clock is not trusted, but the dose asks', () => {
    const codes = found({ jug: makeJug({ useByMs: hoursAgo(1) }), clockTrusted: false });
    expect(codes.has('jug-past-use-by')).toBe(false);
    expect(codes.get('clock-untrusted')).toBe('ask');
  });

  test('a dose of unknown date asks, until a dose of known date stands behind it', () => {
    const undated = makeEarlier(200_000, { clockTrusted: false });
    expect(found({ earlier: [undated] }).get('clock-untrusted')).toBe('ask');
    expect(found({ earlier: [makeEarlier(900), undated] }).get('clock-untrusted')).toBe('ask');
    expect(found({ earlier: [undated, makeEarlier(900)] }).has('clock-untrusted')).toBe(false);
  });

  test('a dose whose date says nothing asks, and does not stop for years because that date lies ahead', () => {
    const ahead = makeEarlier(-20_000, { clockTrusted: false });
    expect(found({ earlier: [ahead] }).get('clock-untrusted')).toBe('ask');
    expect(found({ earlier: [ahead] }).has('same-active-today')).toBe(false);
  });

  describe('of the platform’s own check', () => {
    const failed: Over = {
      scale: { ...CHECKED, last: { verdict: 'failed', atMs: hoursAgo(1), clockTrusted: true } },
    };

    test('note where the platform was never checked, from the first day', () => {
      expect(found({ scale: { ...CHECKED, last: null } }).get('scale-unchecked')).toBe('note');
    });

    test('ask after a failed check, however fresh, and say only that', () => {
      expect([...found(failed)]).toEqual([['scale-check-failed', 'ask'], ...NOTES]);
    });

    test('stop after a failed or long overdue check where the farm has set it so, never before', () => {
      const stops = { stops: true };
      const stopping = (over: Over): Over => ({ scale: { ...CHECKED, ...over.scale, ...stops } });
      expect(found(stopping(failed)).get('scale-check-failed')).toBe('stop');
      expect(found(checkedDaysAgo(60.01, stops)).get('scale-check-failed')).toBe('stop');
      expect(found(checkedDaysAgo(60, stops)).get('scale-unchecked')).toBe('ask');
      expect(found({ scale: { ...CHECKED, last: null, ...stops } }).get('scale-unchecked')).toBe('note');
    });

    test('follow the days the farm has set', () => {
      expect(found(checkedDaysAgo(8, { everyDays: 7 })).get('scale-unchecked')).toBe('ask');
      expect(found(checkedDaysAgo(8, { everyDays: 10 })).has('scale-unchecked')).toBe(false);
    });

    test('ask where the check passed under a clock that was not trusted, since its age is not known', () => {
      const undated = { verdict: 'passed', atMs: hoursAgo(1), clockTrusted: false } as const;
      expect(found({ scale: { ...CHECKED, last: undated } }).get('scale-unchecked')).toBe('ask');
    });

    test('leave the asking to the clock’s own caution while the clock is not trusted', () => {
      const codes = found({ ...checkedDaysAgo(90), clockTrusted: false });
      expect(codes.get('clock-untrusted')).toBe('ask');
      expect(codes.has('scale-check-failed')).toBe(false);
      expect(found({ ...failed, clockTrusted: false }).get('scale-check-failed')).toBe('ask');
    });

    test('take a check that lies ahead of a clock set back as fresh', () => {
      expect(found(checkedDaysAgo(-5)).has('scale-unchecked')).toBe(false);
    });
  });
});
