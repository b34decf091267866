import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CAUTION_CODES } from '../../../core/dosing/cautions.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { fromSteps } from '../../../core/quantity/round.ts';
import { showVolume, showWeight } from '../../../core/quantity/show.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { heardNumber } from '../../../core/speech/heard-number.ts';
import { SPOKEN_LANGUAGES, type SpokenLanguage } from '../../../core/speech/language.ts';
import { NOT_DONE, REFUSED_ALOUD, type Saying } from '../../../core/speech/saying.ts';
import { heardQuantity, spokenAmount, spokenSurely } from '../../../core/speech/spoken-quantity.ts';
import { utter } from '../../../core/speech/utterance.ts';

const language = fc.constantFrom(...SPOKEN_LANGUAGES);
const graduation = fc.constantFrom(0.01, 0.02, 0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 5);
const from = [
  { day: { kind: 'today' }, part: 'evening' },
  { day: { kind: 'tomorrow' }, part: 'noon' },
  { day: { kind: 'weekday', weekday: 5 }, part: 'evening' },
  { day: { kind: 'date', day: 21, month: 12 }, part: 'morning' },
  'unknown',
  'not-for-people',
  'provisional',
] as const;

/** Every saying there is, numbers apart. */
const SAYINGS: readonly Saying[] = [
  { what: 'animal', name: 'Clover' },
  { what: 'called', name: 'Clover', number: '417' },
  { what: 'called', name: 'Clover', number: null },
  { what: 'weight', weight: '15.4 kg' },
  { what: 'weight', weight: '1 lb' },
  { what: 'who' },
  { what: 'which-animal' },
  { what: 'dose', total: '3.3 mL', marks: ['3.3 mL'], syringe: '6 mL' },
  { what: 'dose', total: '14 mL', marks: ['4.7 mL', '4.7 mL', '4.6 mL'], syringe: '6 mL' },
  ...(['swirl', 'shake'] as const).map((how) => ({ what: 'agitate', how }) as const),
  ...CAUTION_CODES.flatMap((code) =>
    (['stop', 'ask', 'note'] as const).map((strength) => ({ what: 'caution', code, strength }) as const),
  ),
  { what: 'jug-in-hand', number: '7' },
  ...(['whole', 'part', 'spat-out'] as const).map(
    (outcome) => ({ what: 'logged', name: 'Clover', outcome }) as const,
  ),
  ...from.flatMap((each) =>
    (['milk', 'meat'] as const).map((of) => ({ what: 'clear', of, from: each }) as const),
  ),
  ...(['not-given', 'wrong-animal', 'wrong-volume'] as const).map(
    (how) => ({ what: 'undone', how }) as const,
  ),
  { what: 'skipped' },
  { what: 'unanswered', name: 'Clover' },
  ...(['fault', 'net', 'not-zeroed', 'leaning', 'two-animals'] as const).map(
    (trouble) => ({ what: 'deck', trouble }) as const,
  ),
  ...(['slow', 'stop', 'over', 'jug-lifted', 'scale-moved', 'scale-tared'] as const).map(
    (call) => ({ what: 'pour', call }) as const,
  ),
  ...(['whole', 'part', 'too-much', 'jug-lifted', 'jug-changed'] as const).map(
    (call) => ({ what: 'powder', call }) as const,
  ),
  ...(['platform', 'bench', 'wand'] as const).flatMap((role) =>
    (['lost', 'silent', 'back'] as const).map((now) => ({ what: 'link', role, now }) as const),
  ),
  { what: 'tag-unknown', tag: '840003123456789' },
  ...REFUSED_ALOUD.map((why) => ({ what: 'refused', why }) as const),
  { what: 'wrong-number', heard: '3.5 mL', wanted: '3.3 mL' },
  ...NOT_DONE.map((why) => ({ what: 'not-done', why }) as const),
  { what: 'not-understood' },
  { what: 'try-out' },
];

describe('what is said', () => {
  test.each(SPOKEN_LANGUAGES)('in %s every saying has words that an engine reads as words', (lang) => {
    for (const saying of SAYINGS) {
      const { text } = utter(saying, lang);
      expect(text, JSON.stringify(saying)).toMatch(/\p{L}{2}/u);
      // No digit, no unit sign, nothing in capitals: an engine would spell those, or read them its own way.
      expect(text).not.toMatch(/\d|undefined|null|[/%°×_]/);
      expect(text).not.toMatch(/\b(ml|kg|lb|mg|g|cc|no|approx|vs)\b\.|\p{Lu}{2}|\b(mL|kg|lb|mg|cc)\b/u);
      for (const word of text.match(/\p{L}+/gu) ?? []) expect(word).toMatch(/[aeiouyáéíóú]/i);
    }
  });

  test.each<[Saying, string, string]>([
    [
      { what: 'dose', total: '3.3 mL', marks: ['1.65 mL', '1.65 mL'], syringe: '3 mL' },
      'three point three millilitres, two draws of one point six five, three mil syringe',
      'tres punto tres mililitros, dos cargas de uno punto seis cinco, jeringa de tres mililitros',
    ],
    [
      { what: 'dose', total: '14 mL', marks: ['4.7 mL', '4.7 mL', '4.6 mL'], syringe: '6 mL' },
      'fourteen millilitres, one four. three draws, two of four point seven, one of four point six, six mil syringe',
      'catorce mililitros, tres cargas, dos de cuatro punto siete, una de cuatro punto seis, jeringa de seis mililitros',
    ],
    [{ what: 'weight', weight: '30.0 lb' }, 'thirty pounds, three zero', 'treinta libras'],
    [{ what: 'weight', weight: '1 lb' }, 'one pound', 'una libra'],
    [{ what: 'weight', weight: '0.5 kg' }, 'zero point five kilograms', 'cero punto cinco kilogramos'],
    [
      { what: 'called', name: 'Clover', number: '417' },
      'Clover, tag four one seven',
      'Clover, arete cuatro uno siete',
    ],
    [{ what: 'animal', name: 'B417' }, 'B four one seven', 'B cuatro uno siete'],
    [
      { what: 'clear', of: 'milk', from: from[3] },
      'Milk not before the twenty first of December, morning.',
      'Leche no antes del veintiuno de diciembre por la mañana.',
    ],
    [
      { what: 'wrong-number', heard: '3.5 mL', wanted: '3.3 mL' },
      'Not logged. I heard three point five millilitres. The dose is three point three millilitres.',
      'No anotado. Oí tres punto cinco mililitros. La dosis es tres punto tres mililitros.',
    ],
  ])('%o', (saying, en, es) => {
    expect(utter(saying, 'en').text).toBe(en);
    expect(utter(saying, 'es').text).toBe(es);
  });

  test('a stop outranks a dose, and a dose its weight', () => {
    const priority = (saying: Saying) => utter(saying, 'en').priority;
    expect(priority({ what: 'pour', call: 'stop' })).toBe('urgent');
    expect(priority({ what: 'caution', code: 'too-young', strength: 'stop' })).toBe('urgent');
    expect(priority({ what: 'dose', total: '3 mL', marks: ['3 mL'], syringe: '6 mL' })).toBe('important');
    expect(priority({ what: 'weight', weight: '15 kg' })).toBe('plain');
  });
});

describe('the way back', () => {
  const doseOf = (count: number, mark: number) => ({
    value: fromSteps(count, mark),
    shown: showVolume(millilitres(fromSteps(count, mark)), millilitres(mark)),
  });

  test('every dose shown is spoken back to the same number, its draws too', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 600 }), { minLength: 1, maxLength: 3 }),
        graduation,
        language,
        (counts, mark, lang) => {
          const { value, shown } = doseOf(
            counts.reduce((sum, count) => sum + count, 0),
            mark,
          );
          const marks = counts.map((count) => doseOf(count, mark).shown);
          const { text } = utter({ what: 'dose', total: shown, marks, syringe: '60 mL' }, lang);
          expect(heardQuantity(firstQuantity(text, lang), lang)).toEqual({ value, unit: 'mL' });
          for (const each of marks.length > 1 ? marks : []) expect(text).toContain(spokenAmount(each, lang));
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('every weight shown is spoken back to the number shown', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 300_000 }),
        fc.constantFrom('kg', 'lb'),
        fc.constantFrom(10, 50, 100, 500),
        language,
        (mass, unit, division, lang) => {
          const shown = showWeight(grams(mass), unit, grams(division));
          const value = Number(shown.split(' ')[0]?.replaceAll(',', ''));
          expect(heardQuantity(spokenSurely(shown, lang), lang)).toEqual({ value, unit });
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('digits that do not match the number before them are not believed', () => {
    expect(heardQuantity('fifteen kilograms, five zero', 'en')).toBeNull();
    expect(heardQuantity('fifteen goats', 'en')).toBeNull();
  });

  /** The number with its unit, and the digits after it where there are any. */
  function firstQuantity(text: string, lang: SpokenLanguage): string {
    const [said = '', next = ''] = text.split(/, |\. /);
    return heardNumber(next, lang) === null ? said : `${said}, ${next}`;
  }
});
