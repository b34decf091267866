import { describe, expect, it } from 'vitest';
import { fuzz } from '../fuzz.ts';
import { FORMAT_CASES } from './format-cases.ts';

/** Bytes for each format and seed; `npm run soak` sends five million. */
const TOTAL = 200_000;

describe.each(FORMAT_CASES)('noise, torn and whole frames of $name', (of) => {
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
