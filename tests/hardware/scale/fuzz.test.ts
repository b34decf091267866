import { describe, expect, it } from 'vitest';
import { FUZZED, fuzz, fuzzWand, WAND_FORMS } from '../fuzz.ts';

/** Bytes for each format and seed; `npm run soak -- fuzz` sends five million. */
const TOTAL = 200_000;

describe.each(FUZZED)('noise, torn and whole frames of $name', (of) => {
  it.each([1, 2])('give no weight that was not shown and are counted byte by byte, seed %i', (seed) => {
    const report = fuzz(of, TOTAL, seed);
    expect(report.wrong).toEqual([]);
    expect(report.unaccounted).toBe(0);
    // What an over-long line dropped is only counted, not held.
    expect(report.mostHeld).toBeLessThan(2000);
    // Whole frames are lost to the noise before them, but not most of them.
    expect(report.readings).toBeGreaterThan(report.sent / 3);
  });
});

describe.each(WAND_FORMS)('noise, torn and whole lines of a wand in the form %s', (form) => {
  it.each([1, 2])('give no number that no tag had and are counted byte by byte, seed %i', (seed) => {
    const report = fuzzWand(form, TOTAL, seed);
    expect(report.wrong).toEqual([]);
    expect(report.unaccounted).toBe(0);
    expect(report.mostHeld).toBeLessThanOrEqual(257);
    expect(report.readings).toBeGreaterThan(report.sent / 4);
  });
});
