import { describe, expect, it } from 'vitest';
import { patternFormat } from '../../../hardware/scale/pattern.ts';
import { guessPatterns, type PatternGuess } from '../../../hardware/scale/pattern-guess.ts';

/** A weight left alone, moved, and left alone again: each value with whether it moves. */
const COURSE: readonly (readonly [string, boolean])[] = [
  ...Array.from({ length: 6 }, () => ['0.00', false] as const),
  ['4.10', true],
  ['11.35', true],
  ['19.80', true],
  ['20.45', true],
  ...Array.from({ length: 8 }, () => ['20.00', false] as const),
  ['13.20', true],
  ['2.05', true],
  ['0.60', true],
  ...Array.from({ length: 4 }, () => ['0.00', false] as const),
];

function heard(line: (value: string, moves: boolean) => string): string[] {
  return COURSE.map(([value, moves]) => line(value, moves));
}

function read(guess: PatternGuess | undefined, text: string) {
  if (guess === undefined) return 'no guess';
  const settings = { pattern: guess.pattern, ...(!guess.unitInLine && { unit: guess.unit ?? 'kg' }) };
  const decoded = patternFormat(settings).decode(text, 'bench', 0);
  return decoded.kind === 'reading'
    ? { grams: Math.round(decoded.reading.mass.value), stability: decoded.reading.stability }
    : decoded.kind === 'fault'
      ? decoded.fault
      : decoded.kind;
}

describe('an expression guessed from lines', () => {
  it.each<[string, (value: string, moves: boolean) => string]>([
    ['a word for each', (value, moves) => `${moves ? 'MOT' : 'STB'}; ${value.padStart(8)} kg`],
    ['a mark only in motion', (value, moves) => `W ${value.padStart(7)}kg${moves ? ' ~' : ''}`],
    ['a mark only at rest', (value, moves) => `=${value.padStart(7)} kg${moves ? '' : ' OK'}`],
    ['a mark in front only in motion', (value, moves) => `${moves ? '*' : ''} ${value.padStart(7)} kg`],
    ['a scale number before', (value, moves) => `01 ${value.padStart(7)} kg ${moves ? 'M' : 'S'}`],
    ['signs and brackets', (value, moves) => `[${value.padStart(7)}kg](${moves ? '?' : '!'})`],
    [
      'a second number that changes',
      (value, moves) => `${moves ? 'U' : 'R'} ${value.padStart(7)} kg #${value.length}`,
    ],
  ])('reads %s', (_what, line) => {
    const [best] = guessPatterns(heard(line));
    expect(best).toMatchObject({ unit: 'kg', unitInLine: true });
    expect(best?.confidence).toBeGreaterThan(0.85);
    for (const [value, moves] of COURSE) {
      expect(read(best, line(value, moves))).toEqual({
        grams: Math.round(Number(value) * 1000),
        stability: moves ? 'moving' : 'stable',
      });
    }
    // Heard only without a sign, it reads one below zero as well.
    expect(read(best, line('-1.50', false))).toEqual({ grams: -1500, stability: 'stable' });
  });

  it('offers the marks the other way round as well, as the less likely', () => {
    const guesses = guessPatterns(heard((value, moves) => `${moves ? 'MOT' : 'STB'} ${value} kg`));
    expect(guesses.map(({ rest, moving }) => [rest, moving])).toEqual([
      ['STB', 'MOT'],
      ['MOT', 'STB'],
    ]);
    expect(guesses[1]?.confidence).toBeLessThan(0.2);
  });

  it('leaves the unit to be set where the word for it is none of ours', () => {
    const line = (value: string, moves: boolean) => `${value.padStart(7)} LBS ${moves ? 'M' : 'S'}`;
    const [best] = guessPatterns(heard(line));
    expect(best).toMatchObject({ unit: 'lb', unitInLine: false });
    expect(read(best, line('20.00', false))).toEqual({ grams: 9072, stability: 'stable' });
  });

  it('takes a line of another form for none of its own', () => {
    const line = (value: string, moves: boolean) => `${moves ? 'MOT' : 'STB'}; ${value.padStart(8)} kg`;
    const [best] = guessPatterns([...heard(line), 'OVERLOAD', 'STB;      x kg', 'HELLO 12 kg']);
    expect(read(best, line('20.00', false))).toEqual({ grams: 20_000, stability: 'stable' });
    expect(read(best, 'OVERLOAD')).toBe('bad-header');
    expect(read(best, 'HELLO 12 kg')).toBe('bad-header');
  });

  it('guesses nothing where no mark tells rest from motion, or where nothing is a number', () => {
    expect(guessPatterns(heard((value) => `${value} kg`))).toEqual([]);
    expect(guessPatterns(['READY', 'READY', 'READY'])).toEqual([]);
    expect(guessPatterns([])).toEqual([]);
  });
});
