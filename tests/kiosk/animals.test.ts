import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ageAt } from '../../kiosk/animals/age.ts';
import { dayOf, isoDay, stepped } from '../../kiosk/animals/day-picking.ts';
import { prefixIn, prefixPart } from '../../kiosk/animals/open-prefix.ts';
import { beginningWith, nextCharacters } from '../../kiosk/animals/prefix.ts';
import { NOTHING_SCORED, nextSign, signsOf } from '../../kiosk/animals/scoring.ts';

const named = (name: string, ...visualTags: string[]) => ({ name, visualTags });

describe('finding an animal', () => {
  const herd = [named('Anna', '417'), named('bella'), named('418'), named('B 12'), named('Žofie')];

  test('goes by name or visual tag, whatever capitals and blanks', () => {
    expect(beginningWith(herd, 'b')).toEqual([named('bella'), named('B 12')]);
    expect(beginningWith(herd, '41')).toEqual([named('Anna', '417'), named('418')]);
    expect(beginningWith(herd, '')).toHaveLength(5);
  });

  test('offers only characters that lead on', () => {
    expect(nextCharacters(herd, '')).toEqual(['4', 'A', 'B', 'Ž']);
    expect(nextCharacters(herd, 'b')).toEqual(['1', 'E']);
    expect(nextCharacters(herd, '417')).toEqual([]);
  });

  test('any tap on a character offered finds somebody', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1, maxLength: 8 }), { minLength: 1 }), (names) => {
        const some = names.map((name) => named(name));
        for (const character of nextCharacters(some, ''))
          expect(beginningWith(some, character).length).toBeGreaterThan(0);
      }),
    );
  });

  test('keeps what it was narrowed to in the address', () => {
    expect(prefixIn(prefixPart('41'))).toBe('41');
    expect(prefixIn('a1')).toBeNull();
    expect(prefixIn(undefined)).toBeNull();
  });
});

describe('picking a day', () => {
  const last = { year: 2026, month: 4, day: 14 };

  test.each([
    ['the day goes over the end of a month', { year: 2026, month: 2, day: 28 }, 'day', 1, '2026-03-01'],
    [
      'the month of a 31st ends at its own last',
      { year: 2026, month: 3, day: 31 },
      'month',
      -1,
      '2026-02-28',
    ],
    ['the year of a leap day ends at the 28th', { year: 2024, month: 2, day: 29 }, 'year', 1, '2025-02-28'],
    ['the month goes over the end of a year', { year: 2025, month: 12, day: 5 }, 'month', 1, '2026-01-05'],
    ['no step passes today', { year: 2026, month: 4, day: 14 }, 'day', 1, '2026-04-14'],
    ['a year more than today is today', { year: 2025, month: 12, day: 5 }, 'year', 1, '2026-04-14'],
  ] as const)('%s', (_what, from, part, by, expected) => {
    expect(isoDay(stepped(from, part, by, last))).toBe(expected);
  });

  test('every step is a day of the calendar', () => {
    const day = fc.date({ min: new Date('1990-01-01'), max: new Date('2026-04-14'), noInvalidDate: true });
    const part = fc.constantFrom('day', 'month', 'year');
    fc.assert(
      fc.property(day, part, fc.constantFrom(1, -1), (date, which, by) => {
        const found = isoDay(stepped(dayOf(date.toISOString()), which as 'day', by as 1, last));
        expect(new Date(found).toISOString().slice(0, 10)).toBe(found);
      }),
    );
  });
});

test.each([
  [null, null],
  ['2026-04-20T00:00:00Z', null],
  ['2026-04-13T00:00:00Z', { unit: 'days', count: 1 }],
  ['2026-03-01T00:00:00Z', { unit: 'weeks', count: 6 }],
  ['2025-04-14T00:00:00Z', { unit: 'months', count: 11 }],
  ['2020-04-14T00:00:00Z', { unit: 'years', count: 5 }],
])('an animal born at %s is told so old', (bornAt, age) => {
  expect(ageAt(bornAt, Date.parse('2026-04-14T00:00:00Z'))).toEqual(age);
});

describe('scoring', () => {
  test('asks each species for the signs that were made for it', () => {
    expect(signsOf('goat')).toEqual(['eyelid', 'body', 'soiling', 'jaw', 'coat']);
    expect(signsOf('sheep')).toEqual(['eyelid', 'body', 'soiling', 'jaw']);
    expect(signsOf('cattle')).toEqual(['body', 'soiling', 'jaw']);
  });

  test('goes on to the next sign not seen yet, round to the first, and stays where all are', () => {
    const signs = signsOf('sheep');
    expect(nextSign(signs, 'eyelid', { ...NOTHING_SCORED, eyelid: 4 })).toBe('body');
    expect(nextSign(signs, 'jaw', { ...NOTHING_SCORED, jaw: 'none', body: 3 })).toBe('eyelid');
    const all = { eyelid: 1, body: 3, soiling: 0, jaw: 'none', coat: null } as const;
    expect(nextSign(signs, 'jaw', all)).toBe('jaw');
  });
});
