import { describe, expect, test } from 'vitest';
import { hasRival, jugLife, remaining } from '../../../core/mixing/jug.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { makeJug } from '../make/jug.ts';
import { hoursAgo, NINE_OCLOCK } from '../make/time.ts';

describe('the life of a jug', () => {
  test('a jug is in life until the instant of its use-by', () => {
    const jug = makeJug({ useByMs: NINE_OCLOCK });
    expect(jugLife(jug, NINE_OCLOCK - 1)).toBe('in-life');
    expect(jugLife(jug, NINE_OCLOCK)).toBe('past-use-by');
  });

  test('a jug drawn dry is empty, whatever its date', () => {
    const jug = makeJug({ drawn: makeJug().volume });
    expect(jugLife(jug, NINE_OCLOCK)).toBe('empty');
    expect(remaining(jug).value).toBe(0);
  });

  test('more drawn than was mixed leaves nothing, never less than nothing', () => {
    expect(remaining(makeJug({ drawn: millilitres(5000) })).value).toBe(0);
  });

  test('a jug poured away is discarded, even when full and fresh', () => {
    expect(jugLife(makeJug({ discardedAtMs: hoursAgo(0.1) }), NINE_OCLOCK)).toBe('discarded');
  });

  test('what was drawn and what remains add to what was mixed', () => {
    const jug = makeJug({ drawn: millilitres(46.4) });
    expect(remaining(jug).value + 46.4).toBeCloseTo(jug.volume.value, 9);
  });
});

describe('a rival jug', () => {
  const jug = makeJug();
  const other = makeJug({ id: 'jug-8', number: 8, strength: mgPerMl(24.727) });

  test('is another live jug of the same medicine', () => {
    expect(hasRival(jug, [jug, other], NINE_OCLOCK, true)).toBe(true);
  });

  test.each([
    ['the jug itself', jug],
    ['a jug of another medicine', { ...other, medicineId: 'another' }],
    ['a jug past its use-by', { ...other, useByMs: NINE_OCLOCK }],
    ['a jug poured away', { ...other, discardedAtMs: hoursAgo(1) }],
    ['an empty jug', { ...other, drawn: other.volume }],
  ])('is not %s', (_, candidate) => {
    expect(hasRival(jug, [jug, candidate], NINE_OCLOCK, true)).toBe(false);
  });

  test('is one past its use-by too, while the clock that says so is not trusted', () => {
    const seemsOld = { ...other, useByMs: NINE_OCLOCK - 1 };
    expect(hasRival(jug, [jug, seemsOld], NINE_OCLOCK, false)).toBe(true);
    expect(hasRival(jug, [jug, { ...other, drawn: other.volume }], NINE_OCLOCK, false)).toBe(false);
  });
});
