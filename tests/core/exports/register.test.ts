import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { type RegisterLine, registerHeading, registerRecord } from '../../../core/exports/register.ts';

const LINE: RegisterLine = {
  treatmentId: 't-1',
  givenAtMs: Date.UTC(2026, 4, 2, 14, 3, 11),
  clockTrusted: true,
  animal: {
    name: '=Anna, "the old"',
    tag: '840003123456789',
    species: 'goat',
    class: 'female',
    ageDays: 1500,
    bred: false,
    inMilk: true,
  },
  weight: { kilograms: 40.15, method: 'scale' },
  condition: null,
  medicine: {
    name: 'Levamisole',
    active: 'levamisole hydrochloride',
    mgPerMl: 49.45,
    lot: 'L-7',
    expiresAtMs: Date.UTC(2027, 1, 1, 5),
  },
  mixed: { powderGrams: 52, waterMl: 905, by: 'Kim', atMs: Date.UTC(2026, 4, 2, 13) },
  dose: { targetMgPerKg: 12, computedMl: 9.743, givenMl: 9.8, route: 'oral drench', outcome: 'whole' },
  use: 'extra-label',
  directedBy: 'Dr Oak',
  meat: { kind: 'at', atMs: Date.UTC(2026, 4, 11, 14, 3, 11) },
  milk: { kind: 'unknown' },
  by: 'Ida',
  reaction: null,
  corrections: ['wrong volume: 9.6 mL (Kim)', 'wrong animal: Berta (Kim)'],
};

/** The line as another program reads it, each cell under its heading. */
function readBack(line: RegisterLine): Record<string, string> {
  const [record] = parse(registerHeading() + registerRecord(line), { columns: true }) as Record<
    string,
    string
  >[];
  if (record === undefined) throw new Error('nothing was read');
  return record;
}

describe('a line of the treatment register', () => {
  test('says all that is on record', () => {
    const read = readBack(LINE);
    expect(Object.keys(read)).toHaveLength(34);
    expect(read).toMatchObject({
      'given at': '2026-05-02T14:03:11.000Z',
      animal: `'=Anna, "the old"`,
      tag: '840003123456789',
      'weight kg': '40.15',
      'strength mg/mL': '49.45',
      lot: 'L-7',
      expires: '2027-01',
      'water mL': '905',
      'mixed by': 'Kim',
      'given mL': '9.8',
      'directed by': 'Dr Oak',
      'meat clear': '2026-05-11T14:03:11.000Z',
      corrections: 'wrong volume: 9.6 mL (Kim); wrong animal: Berta (Kim)',
    });
  });

  test('never leaves a clear time empty', () => {
    expect(readBack(LINE)['milk clear']).toBe('not known');
    expect(readBack({ ...LINE, milk: { kind: 'not-for-people' } })['milk clear']).toBe('not for people');
  });

  test('of a ready-made medicine has no mixing', () => {
    expect(readBack({ ...LINE, mixed: null })).toMatchObject({
      'powder g': '',
      'mixed by': '',
      'mixed at': '',
    });
  });
});
