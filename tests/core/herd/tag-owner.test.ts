import { describe, expect, test } from 'vitest';
import { tagOwner } from '../../../core/herd/tag-owner.ts';
import { makeHerdAnimal } from '../make/herd-animal.ts';

const OLD = '840003000000001';
const NEW = '840003000000002';
const lost = (number: string) => ({ number, untilMs: 5, why: 'lost' }) as const;
const anna = makeHerdAnimal({ id: 'a', name: 'Anna', tag: NEW, formerTags: [lost(OLD)] });

describe('whose a tag is', () => {
  test('that of the animal that wears it, though another lost it once', () => {
    expect(tagOwner(NEW, [anna])).toEqual({ kind: 'wears', animalId: 'a' });
    const berta = makeHerdAnimal({ id: 'b', name: 'Berta', tag: OLD });
    expect(tagOwner(OLD, [anna, berta])).toEqual({ kind: 'wears', animalId: 'b' });
  });

  test('is for a person to say where it was lost: one that was found, or put into another ear', () => {
    expect(tagOwner(OLD, [anna])).toEqual({ kind: 'wore', animalIds: ['a'] });
    const berta = makeHerdAnimal({ id: 'b', name: 'Berta', tag: null, formerTags: [lost(OLD)] });
    expect(tagOwner(OLD, [anna, berta])).toEqual({ kind: 'wore', animalIds: ['a', 'b'] });
  });

  test('that came with a merged record is the animal’s own', () => {
    const merged = { ...anna, formerTags: [{ number: OLD, untilMs: 5, why: 'merged' } as const] };
    expect(tagOwner(OLD, [merged])).toEqual({ kind: 'wears', animalId: 'a' });
  });

  test('is for a person to say where two are recorded with it', () => {
    const berta = makeHerdAnimal({ id: 'b', name: 'Berta', tag: NEW });
    expect(tagOwner(NEW, [anna, berta])).toEqual({ kind: 'shared', animalIds: ['a', 'b'] });
    const merged = { ...anna, formerTags: [{ number: OLD, untilMs: 5, why: 'merged' } as const] };
    expect(tagOwner(OLD, [merged, { ...merged, id: 'c' }])).toEqual({
      kind: 'shared',
      animalIds: ['a', 'c'],
    });
    expect(tagOwner(NEW, [anna, { ...berta, life: { kind: 'sold', atMs: 1, by: 'Ida' } }])).toMatchObject({
      animalId: 'a',
    });
  });

  test('is nobody’s where only animals that left had it', () => {
    const sold = { ...anna, life: { kind: 'sold', atMs: 1, by: 'Ida' } as const };
    expect(tagOwner(OLD, [sold])).toEqual({ kind: 'nobody' });
    expect(tagOwner(NEW, [sold])).toEqual({ kind: 'nobody' });
  });
});
