import { describe, expect, test } from 'vitest';
import { Answer, Intent } from '../../shared/intent.ts';
import { ClientMessage } from '../../shared/message.ts';
import { INTENTS } from './make.ts';

const accepts = (value: unknown): boolean => Intent.safeParse(value).success;

describe.each(Object.values(INTENTS))('$type', (intent) => {
  test('passes as it is, unchanged', () => {
    expect(Intent.parse(intent)).toEqual(intent);
    expect(ClientMessage.parse({ type: 'intent', intent })).toEqual({ type: 'intent', intent });
  });

  test('is refused with a key nobody knows', () => {
    expect(accepts({ ...intent, mg: 12 })).toBe(false);
  });

  test('is refused without an id, with an empty one, and with one too long', () => {
    const { id, ...rest } = intent;
    expect(id).toBe('i');
    expect(accepts(rest)).toBe(false);
    expect(accepts({ ...intent, id: '' })).toBe(false);
    expect(accepts({ ...intent, id: 'x'.repeat(65) })).toBe(false);
    expect(accepts({ ...intent, id: 7 })).toBe(false);
  });

  test('is refused with any one of its parts missing', () => {
    for (const key of Object.keys(intent)) {
      expect(accepts(Object.fromEntries(Object.entries(intent).filter(([name]) => name !== key)))).toBe(
        false,
      );
    }
  });
});

const NOT_NUMBERS = [Number.NaN, Number.POSITIVE_INFINITY, '3.3', '', null, true, undefined];

describe('numbers of an intent', () => {
  const volume = (volumeMl: unknown): boolean =>
    accepts({ ...INTENTS.correct, what: { kind: 'wrong-volume', volumeMl } });
  const hours = (meatHours: unknown): boolean => accepts({ ...INTENTS.approve, meatHours });
  const degrees = (celsius: unknown): boolean => accepts({ ...INTENTS['mix-water'], celsius });

  test.each(NOT_NUMBERS)('are numbers, not %j', (value) => {
    expect(volume(value)).toBe(false);
    expect(degrees(value)).toBe(false);
    if (value !== null) expect(hours(value)).toBe(false);
  });

  test('a volume is above zero and no more than a litre', () => {
    expect([-3.3, 0, 1000.1].map(volume)).toEqual([false, false, false]);
    expect([0.01, 3.3, 1000].map(volume)).toEqual([true, true, true]);
  });

  test('withdrawal hours are whole, not negative, at most a year, or left as they ship', () => {
    expect([-1, 0.5, 24 * 365 + 1].map(hours)).toEqual([false, false, false]);
    expect([0, 96, 24 * 365, null].map(hours)).toEqual([true, true, true, true]);
  });

  test('water is 1 to 40 °C: a temperature in °F is refused', () => {
    expect([0.9, 40.1, 68, -4].map(degrees)).toEqual([false, false, false, false]);
    expect([1, 20, 40].map(degrees)).toEqual([true, true, true]);
  });
});

describe('a wrong unit is refused', () => {
  test.each([
    ['a volume in cc', { ...INTENTS.correct, what: { kind: 'wrong-volume', volumeCc: 3.3 } }],
    ['a volume as text', { ...INTENTS.correct, what: { kind: 'wrong-volume', volumeMl: '3.3 mL' } }],
    ['a temperature in °F', { ...INTENTS['mix-water'], celsius: undefined, fahrenheit: 68 }],
    ['a weight unit of stones', { ...INTENTS['set-weight-unit'], unit: 'st' }],
    ['a part of a day of withdrawal', { ...INTENTS.approve, meatDays: 1.5 }],
    ['weeks of withdrawal', { ...INTENTS.approve, meatWeeks: 4 }],
    [
      'kilograms led on to the platform',
      { ...INTENTS.tray, action: { do: 'lead-on', animalId: 'a', kg: 40, grade: 'calm' } },
    ],
  ])('%s', (_, intent) => {
    expect(accepts(intent)).toBe(false);
  });
});

describe('what is not an intent is refused', () => {
  test.each([null, undefined, 7, 'give', [], {}, { type: 'dose', id: 'i' }, { id: 'i' }])('%j', (value) => {
    expect(accepts(value)).toBe(false);
  });

  test('a caution code, an outcome and a reason nobody knows', () => {
    expect(accepts({ ...INTENTS.accept, code: 'not-a-code' })).toBe(false);
    expect(accepts({ ...INTENTS.give, outcome: 'twice' })).toBe(false);
    expect(accepts({ ...INTENTS.skip, reason: '' })).toBe(false);
  });

  test('a name of nothing but spaces, for an animal or a person', () => {
    expect(accepts({ ...INTENTS.enrol, name: '   ' })).toBe(false);
    expect(accepts({ ...INTENTS['set-person'], name: '   ' })).toBe(false);
  });
});

describe('an answer', () => {
  test('says yes, or no with a code and words', () => {
    expect(Answer.safeParse({ ok: true, id: 'i', repeated: false }).success).toBe(true);
    const no = { ok: false, id: 'i', repeated: false, code: 'offer-ended', message: 'That offer has ended.' };
    expect(Answer.safeParse(no).success).toBe(true);
    expect(Answer.safeParse({ ...no, code: 'because' }).success).toBe(false);
    expect(Answer.safeParse({ ok: false, id: 'i', repeated: false }).success).toBe(false);
    expect(Answer.safeParse({ ok: true, id: 'i', repeated: false, code: 'offer-ended' }).success).toBe(false);
  });
});
