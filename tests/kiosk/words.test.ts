import { expect, test } from 'vitest';
import { CAUTION_CODES } from '../../core/dosing/cautions.ts';
import { remedyOf } from '../../kiosk/platform/stop-remedy.ts';
import { enWhole as en } from '../../kiosk/words/en-whole.ts';
import { esWhole as es } from '../../kiosk/words/es-whole.ts';
import { Show } from '../../kiosk/words/show.ts';

const show = new Show({
  unit: 'kg',
  division: 100,
  benchDivision: 1,
  locale: 'en-GB',
  nowMs: Date.now(),
});
const values = {
  grams: 24_600,
  lastGrams: 30_000,
  fromGrams: 23_000,
  useByMs: Date.now(),
  leftMl: 4,
  lastGivenAtMs: Date.now(),
  repeatDays: 14,
  high: 18.4,
  ceiling: 18,
  value: 10.2,
  target: 12,
  mixedAtMs: Date.now(),
  lastAtMs: Date.now(),
  failedAtMs: Date.now(),
  days: 30,
  least: 122,
  leastGrams: 5_000,
  bredAtMs: Date.now(),
  malesAtMs: Date.now(),
  low: 9.8,
  floor: 10,
  reduction: 0.923,
  testedAtMs: Date.now(),
};

const both = CAUTION_CODES.flatMap((code) => [
  { code, language: 'English', words: en },
  { code, language: 'Spanish', words: es },
]);

test.each(both)(
  'the caution $code has $language words for its matter and for what is known',
  ({ code, words }) => {
    const said = words.cautions[code](values, show);
    expect(said.title.length).toBeGreaterThan(4);
    expect(said.title.length).toBeLessThanOrEqual(32);
    expect(said.detail).toMatch(/[.?]$/);
    expect(`${said.title} ${said.detail} ${said.accept}`).not.toMatch(/undefined|NaN|–/);
  },
);

test.each([
  'repeat-too-soon',
  'unknown-medicine-given',
  'weight-outside-species',
  'weight-pounds-for-kilograms',
  'weight-far-from-last',
  'weight-changed',
  'age-unknown',
  'too-light',
  'breeding-unknown',
  'interval-crosses-floor',
  'milk-time-unknown',
  'milk-not-for-people',
  'interval-crosses-ceiling',
  'below-target',
  'clock-untrusted',
  'scale-unchecked',
  'scale-check-failed',
] as const)('the ask %s says what accepting it means', (code) => {
  expect(en.cautions[code](values, show).accept).not.toBe('');
  expect(es.cautions[code](values, show).accept).not.toBe('');
});

/** Words that are the same in both languages. */
const SAME_IN_BOTH = [
  'Animal',
  'Animal',
  'Asia',
  'Australia',
  'English',
  'Español',
  'McKenna 2006',
  'provisional',
];

/** The figures in a sentence, in their order. */
function figures(text: string): string[] {
  return text.match(/\d+(?:\.\d+)?/g) ?? [];
}

test.each(CAUTION_CODES)('the caution %s tells the same figures in both languages', (code) => {
  const [english, spanish] = [en, es].map((words) => words.cautions[code](values, show));
  expect(figures(`${spanish?.detail} ${spanish?.accept}`).sort()).toEqual(
    figures(`${english?.detail} ${english?.accept}`).sort(),
  );
});

test('a caution whose numbers did not come shows a dash rather than a wrong number', () => {
  expect(en.cautions['repeat-too-soon']({}, show).detail).toBe(
    'It had this medicine –. The rule waits – days.',
  );
});

test('without an earlier dose the clock’s caution says that none is written', () => {
  expect(en.cautions['clock-untrusted']({ mixedAtMs: 0 }, show).detail).toContain('none written');
});

test.each([
  ['not-approved', 'approve'],
  ['no-syringe', 'syringes'],
  ['unanswered-offer', 'answer'],
  ['jug-empty', 'other-jug'],
  ['jug-past-use-by', 'other-jug'],
  ['jug-too-little', 'other-jug'],
  ['species-not-covered', 'other-jug'],
  ['scale-check-failed', 'check-scale'],
  ['same-active-today', 'skip'],
] as const)('the way on from the stop %s is %s', (code, remedy) => {
  expect(remedyOf(code)).toBe(remedy);
});

/** Every plain word of a catalogue, with its place. */
function leaves(value: unknown, path: string): [string, string][] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, `${path}.${key}`));
}

test.each([
  ['English', en],
  ['Spanish', es],
])('no %s word says cc, or a number with a naked point', (_, catalogue) => {
  const words = leaves(catalogue, 'words');
  expect(words.length).toBeGreaterThan(150);
  expect(words.filter(([, word]) => /\bcc\b|(^|\s)\.\d|\d\.0\b/.test(word))).toEqual([]);
});

test('no plain word of Spanish was left in English', () => {
  const english = new Map(leaves(en, 'words'));
  const same = leaves(es, 'words').filter(
    ([path, word]) => /[a-z]{3}/.test(word) && english.get(path) === word,
  );
  expect(same.map(([, word]) => word).sort()).toEqual(SAME_IN_BOTH);
});
