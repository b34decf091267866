import { describe, expect, test } from 'vitest';
import { holdsOf, useNow } from '../../../core/round/clear-board.ts';
import type { DayBookEntry } from '../../../core/round/day-book.ts';
import type { Correction, Treatment } from '../../../core/round/treatment.ts';
import { makeCorrection, makeTreatment } from '../make/book.ts';
import { NINE_OCLOCK } from '../make/time.ts';

const ANIMALS = [
  { id: 'anna', species: 'goat' },
  { id: 'bella', species: 'goat' },
  { id: 'fern', species: 'sheep' },
] as const;
const HOUR = 3_600_000;
const DAY = 24 * HOUR;

function entry(over: Partial<Treatment> = {}, ...corrections: Correction['what'][]): DayBookEntry {
  const treatment = makeTreatment(over);
  return {
    treatment,
    corrections: corrections.map((what, i) => ({
      ...makeCorrection(what, treatment.id, `c-${i}`),
      atMs: treatment.givenAtMs + HOUR,
    })),
  };
}

function holds(entries: readonly DayBookEntry[], zone = 'UTC') {
  const found = holdsOf(entries, ANIMALS, zone);
  return (animal: string, what: 'meat' | 'milk') => found.get(animal)?.[what].clear;
}

describe('the board', () => {
  const given = makeTreatment().givenAtMs;

  test('keeps nothing back of an animal that was never treated', () => {
    expect(holds([entry()])('bella', 'meat')).toBeUndefined();
    expect(useNow(undefined, NINE_OCLOCK, true)).toEqual({ kind: 'free' });
  });

  test('keeps meat back for the four days of the rule, and milk for as long as its time is unknown', () => {
    const of = holds([entry()]);
    expect(of('anna', 'meat')).toEqual({ kind: 'at', atMs: given + 4 * DAY });
    expect(of('anna', 'milk')).toEqual({ kind: 'unknown' });
  });

  test('takes the longest of several treatments, in whatever order they stand', () => {
    const long = entry({ id: 'long', meat: { kind: 'at', atMs: given + 30 * DAY } });
    for (const entries of [
      [entry(), long],
      [long, entry()],
    ]) {
      expect(holds(entries)('anna', 'meat')).toEqual({ kind: 'at', atMs: given + 30 * DAY });
    }
  });

  test('lets unknown outweigh every time, and never for people outweigh unknown', () => {
    const unknown = entry({ meat: { kind: 'unknown' } });
    const never = entry({ meat: { kind: 'not-for-people' } });
    expect(holds([unknown, entry()])('anna', 'meat')).toEqual({ kind: 'unknown' });
    expect(holds([never, unknown])('anna', 'meat')).toEqual({ kind: 'not-for-people' });
  });

  test('never frees what is unknown, however long ago', () => {
    const hold = holdsOf([entry()], ANIMALS, 'UTC').get('anna')?.milk;
    expect(useNow(hold, given + 4000 * DAY, true)).toEqual({ kind: 'unknown' });
  });

  test('frees at the instant itself, and not a millisecond before', () => {
    const hold = holdsOf([entry()], ANIMALS, 'UTC').get('anna')?.meat;
    expect(useNow(hold, given + 4 * DAY - 1, true).kind).toBe('at');
    expect(useNow(hold, given + 4 * DAY, true)).toEqual({ kind: 'free' });
  });

  test('frees nothing by a clock that is not trusted, now or at the giving', () => {
    const later = given + 400 * DAY;
    expect(useNow(holdsOf([entry()], ANIMALS, 'UTC').get('anna')?.meat, later, false).kind).toBe('at');
    const undated = holdsOf([entry({ clockTrusted: false })], ANIMALS, 'UTC').get('anna')?.meat;
    expect(useNow(undated, later, true).kind).toBe('at');
  });

  test('keeps a treatment of unknown date back from the day the veterinarian’s time was entered', () => {
    const said = { kind: 'vet-time', meat: { unit: 'hours', count: 240 }, milk: null } as const;
    const hold = holdsOf([entry({ clockTrusted: false }, said)], ANIMALS, 'UTC').get('anna')?.meat;
    expect(hold?.clear).toEqual({ kind: 'at', atMs: given + HOUR + 240 * HOUR });
    expect(useNow(hold, given + 400 * DAY, true)).toEqual({ kind: 'free' });
  });

  test('applies a veterinarian’s time entered later to the treatment it is of', () => {
    const said = { kind: 'vet-time', meat: null, milk: { unit: 'days', count: 12 } } as const;
    const of = holds([entry({}, said)]);
    expect(of('anna', 'milk')).toEqual({ kind: 'at', atMs: given + 12 * DAY });
    expect(of('anna', 'meat')).toEqual({ kind: 'at', atMs: given + 4 * DAY });
  });

  test('lets a veterinarian lengthen a known time, never shorten it, and takes the latest word', () => {
    const said = (count: number) =>
      ({ kind: 'vet-time', meat: { unit: 'days', count }, milk: null }) as const;
    expect(holds([entry({}, said(2))])('anna', 'meat')).toEqual({ kind: 'at', atMs: given + 4 * DAY });
    expect(holds([entry({}, said(9), said(20))])('anna', 'meat')).toEqual({
      kind: 'at',
      atMs: given + 20 * DAY,
    });
    expect(holds([entry({}, said(20), said(9))])('anna', 'meat')).toEqual({
      kind: 'at',
      atMs: given + 9 * DAY,
    });
  });

  test('follows the corrections: not given frees, another animal is kept back instead', () => {
    expect(holds([entry({}, { kind: 'not-given' })])('anna', 'meat')).toBeUndefined();
    const moved = holds([entry({}, { kind: 'wrong-animal', animalId: 'bella' })]);
    expect(moved('anna', 'meat')).toBeUndefined();
    expect(moved('bella', 'meat')).toEqual({ kind: 'at', atMs: given + 4 * DAY });
  });

  test('knows no time for a species the rule is not for, nor for a volume beyond the ceiling', () => {
    expect(holds([entry({}, { kind: 'wrong-animal', animalId: 'fern' })])('fern', 'meat')).toEqual({
      kind: 'unknown',
    });
    const volume = makeTreatment().offer.dose.plan.total.value;
    expect(holds([entry({}, { kind: 'wrong-volume', volumeMl: 1.6 * volume })])('anna', 'meat')).toEqual({
      kind: 'unknown',
    });
    expect(holds([entry({}, { kind: 'wrong-volume', volumeMl: 1.2 * volume })])('anna', 'meat')?.kind).toBe(
      'at',
    );
  });
});
