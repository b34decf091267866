import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clearAfter } from '../../../core/dosing/withdrawal.ts';
import { NINE_OCLOCK } from '../make/time.ts';

describe('clear times', () => {
  test('hours are counted to the minute from the giving', () => {
    const hours = { kind: 'hours', hours: 96, evidence: 'secondary', source: 'a chart' } as const;
    expect(clearAfter(hours, NINE_OCLOCK)).toEqual({ kind: 'at', atMs: Date.UTC(2026, 4, 5, 9) });
  });

  test('unknown stays unknown and never becomes now', () => {
    expect(clearAfter({ kind: 'unknown', source: 'none read' }, NINE_OCLOCK)).toEqual({ kind: 'unknown' });
  });

  test('not for people has no end', () => {
    expect(clearAfter({ kind: 'not-for-people', source: 'no tolerance' }, NINE_OCLOCK)).toEqual({
      kind: 'not-for-people',
    });
  });

  test('a longer withdrawal never clears sooner', () => {
    fc.assert(
      fc.property(fc.nat(9000), fc.nat(9000), (hours, more) => {
        const at = (value: number): number => {
          const clear = clearAfter(
            { kind: 'hours', hours: value, evidence: 'primary', source: 's' },
            NINE_OCLOCK,
          );
          return clear.kind === 'at' ? clear.atMs : Number.NaN;
        };
        expect(at(hours + more)).toBeGreaterThanOrEqual(at(hours));
        expect(at(hours)).toBeGreaterThanOrEqual(NINE_OCLOCK);
      }),
    );
  });
});
