import { describe, expect, test } from 'vitest';
import { SYRINGE_CATALOGUE } from '../../core/dosing/syringe.ts';
import { SHIPPED } from '../../core/formulary/shipped.ts';
import {
  activeTooHeavy,
  ceilingTooLow,
  floorTooHigh,
  keepsNothingBack,
  mixDisagrees,
  ratesDisagree,
  strengthsDisagree,
} from '../../core/medicine/contradictions.ts';
import { OpenFailure, type OpenFailureCode } from '../../hardware/serial/open-failure.ts';
import { SHARED_TROUBLE, troubleOf } from '../../server/devices/trouble.ts';
import { esShipped } from '../../shared/es-shipped.ts';

/** The names and sentences of a medicine that a screen shows; where a figure is from stays as it is. */
function shownOf(value: unknown, key = ''): string[] {
  if (typeof value === 'string')
    return ['text', 'why', 'name', 'active', 'purpose'].includes(key) ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((each) => shownOf(each, key));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([inner, each]) => shownOf(each, inner));
}

const OPEN_FAILURES: Readonly<Record<OpenFailureCode, true>> = {
  'not-found': true,
  'no-permission': true,
  'in-use': true,
  'not-serial': true,
  other: true,
};

const SENTENCES: Readonly<Record<string, readonly (string | null)[]>> = {
  'the formulary': [...new Set(shownOf(SHIPPED))],
  'the syringes': SYRINGE_CATALOGUE.map(({ name }) => name),
  'what contradicts itself': [
    ratesDisagree(10, 10),
    strengthsDisagree(10, 10),
    activeTooHeavy(52, 52),
    mixDisagrees(10, 1000, 20),
    ceilingTooLow(8, 12),
    floorTooHigh(12, 8),
    keepsNothingBack(0),
  ],
  'a device that is lost': [
    SHARED_TROUBLE,
    troubleOf({ status: 'silent' }),
    ...Object.keys(OPEN_FAILURES).map((code) => new OpenFailure(code as OpenFailureCode, '/dev/x').remedy),
  ],
};

describe.each(Object.entries(SENTENCES))('of %s', (_, sentences) => {
  test('every name and sentence has its Spanish', () => {
    expect(sentences.length).toBeGreaterThan(5);
    expect(sentences.filter((each) => each === null || esShipped(each) === each)).toEqual([]);
  });

  test('the figures stay as they are', () => {
    const figures = (text: string | null): string[] => text?.match(/\d+(?:\.\d+)?/g) ?? [];
    for (const each of sentences) expect(figures(esShipped(each ?? '')).sort()).toEqual(figures(each).sort());
  });
});

test.each(['Drench of the upper valley', '12 mL', '5 mL syringe of Kim'])(
  'what the farm wrote itself stays as it was written: %s',
  (text) => expect(esShipped(text)).toBe(text),
);
