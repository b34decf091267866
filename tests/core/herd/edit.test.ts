import { describe, expect, test } from 'vitest';
import { type AnimalEdit, editAnimal } from '../../../core/herd/edit.ts';
import type { HerdAnimal } from '../../../core/herd/herd-animal.ts';
import { DAY_MS } from '../../../core/moment.ts';
import { makeHerdAnimal } from '../make/herd-animal.ts';

const NOW = Date.UTC(2026, 4, 2, 9);
const ANNA = makeHerdAnimal({ class: 'female', bornAtMs: NOW - 1000 * DAY_MS });

function edited(edit: AnimalEdit, animal: HerdAnimal = ANNA, herd: readonly HerdAnimal[] = []): HerdAnimal {
  const result = editAnimal(animal, edit, herd, NOW);
  if (!result.ok) throw new Error(result.why);
  return result.animal;
}

function refused(edit: AnimalEdit, animal: HerdAnimal = ANNA, herd: readonly HerdAnimal[] = []) {
  const result = editAnimal(animal, edit, herd, NOW);
  return result.ok ? null : result.why;
}

describe('an edit', () => {
  test('into milk notes since when, and out of milk forgets it', () => {
    const inMilk = edited({ what: 'milk', inMilk: true });
    expect(inMilk).toMatchObject({ inMilk: true, inMilkSinceMs: NOW });
    expect(edited({ what: 'milk', inMilk: false }, inMilk)).toMatchObject({
      inMilk: false,
      inMilkSinceMs: null,
    });
  });

  test('to a male takes milk and breeding away', () => {
    const doe = { ...ANNA, inMilk: true, inMilkSinceMs: 1, bredAtMs: NOW - DAY_MS };
    expect(edited({ what: 'class', class: 'castrate' }, doe)).toMatchObject({
      class: 'castrate',
      inMilk: false,
      inMilkSinceMs: null,
      bredAtMs: null,
    });
  });

  test('of the birth given ends the pregnancy that began before it, and no later one', () => {
    const bred = { ...ANNA, bredAtMs: NOW - 150 * DAY_MS };
    expect(edited({ what: 'day', day: 'kidded', onMs: NOW }, bred).bredAtMs).toBeNull();
    const again = { ...ANNA, bredAtMs: NOW - DAY_MS };
    expect(edited({ what: 'day', day: 'kidded', onMs: NOW - 30 * DAY_MS }, again).bredAtMs).toBe(
      NOW - DAY_MS,
    );
  });

  test('of the birth given ends what was known of the males, and begins the milk that is used', () => {
    const doe = {
      ...ANNA,
      malesRemovedAtMs: NOW - 150 * DAY_MS,
      inMilk: true,
      inMilkSinceMs: NOW - 400 * DAY_MS,
    };
    const after = edited({ what: 'day', day: 'kidded', onMs: NOW - DAY_MS }, doe);
    expect(after).toMatchObject({ malesRemovedAtMs: null, inMilkSinceMs: NOW - DAY_MS });
    expect(edited({ what: 'day', day: 'kidded', onMs: NOW }, ANNA).inMilkSinceMs).toBeNull();
  });

  test('into milk counts from the birth before it, unless that was a year ago', () => {
    const gave = (days: number) => ({ ...ANNA, kiddedAtMs: NOW - days * DAY_MS });
    expect(edited({ what: 'milk', inMilk: true }, gave(20)).inMilkSinceMs).toBe(NOW - 20 * DAY_MS);
    expect(edited({ what: 'milk', inMilk: true }, gave(400)).inMilkSinceMs).toBe(NOW);
  });

  test('sets the day the males were taken away, and since when it is in milk', () => {
    const inMilk = { ...ANNA, inMilk: true };
    expect(edited({ what: 'day', day: 'males-removed', onMs: NOW }).malesRemovedAtMs).toBe(NOW);
    expect(edited({ what: 'day', day: 'in-milk-since', onMs: NOW }, inMilk).inMilkSinceMs).toBe(NOW);
    expect(refused({ what: 'day', day: 'in-milk-since', onMs: NOW })).toBe('not-in-milk');
  });

  test('of a day can take it back', () => {
    const bred = { ...ANNA, bredAtMs: NOW };
    expect(edited({ what: 'day', day: 'bred', onMs: null }, bred).bredAtMs).toBeNull();
  });

  test('keeps pen and mark', () => {
    expect(edited({ what: 'pen', pen: 'north' }).pen).toBe('north');
    expect(edited({ what: 'mark', mark: null }, { ...ANNA, mark: 'red' }).mark).toBeNull();
  });

  test.each<[string, AnimalEdit, HerdAnimal, ReturnType<typeof refused>]>([
    ['a male into milk', { what: 'milk', inMilk: true }, { ...ANNA, class: 'male' }, 'females-only'],
    ['a male as bred', { what: 'day', day: 'bred', onMs: NOW }, { ...ANNA, class: 'male' }, 'females-only'],
    ['a day to come', { what: 'day', day: 'bred', onMs: NOW + DAY_MS }, ANNA, 'in-future'],
    ['a birth 60 years ago', { what: 'day', day: 'born', onMs: NOW - 22_000 * DAY_MS }, ANNA, 'too-long-ago'],
    ['breeding before birth', { what: 'day', day: 'bred', onMs: NOW - 1001 * DAY_MS }, ANNA, 'before-birth'],
    [
      'birth after breeding',
      { what: 'day', day: 'born', onMs: NOW - DAY_MS },
      { ...ANNA, bredAtMs: NOW - 2 * DAY_MS },
      'before-birth',
    ],
    [
      'one that was sold',
      { what: 'pen', pen: 'north' },
      { ...ANNA, life: { kind: 'sold', atMs: 1, by: 'Kim' } },
      'gone',
    ],
  ])('does not put %s down', (_what, edit, animal, why) => {
    expect(refused(edit, animal)).toBe(why);
  });

  test('takes no name that another on the farm has, whatever its capitals; one of an animal sold is free', () => {
    const other = makeHerdAnimal({ id: 'other', name: 'BELLA ' });
    expect(refused({ what: 'name', name: 'Bella' }, ANNA, [ANNA, other])).toBe('name-in-use');
    const sold: HerdAnimal = { ...other, life: { kind: 'sold', atMs: 1, by: 'Kim' } };
    expect(edited({ what: 'name', name: 'Bella' }, ANNA, [ANNA, sold]).name).toBe('Bella');
    expect(edited({ what: 'name', name: 'ANNA' }, ANNA, [ANNA]).name).toBe('ANNA');
  });
});
