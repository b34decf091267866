import { describe, expect, test } from 'vitest';
import type { HerdAnimal } from '../../../core/herd/herd-animal.ts';
import { mergeAnimals } from '../../../core/herd/merge.ts';
import { partAnimals } from '../../../core/herd/part.ts';
import { DAY_MS } from '../../../core/moment.ts';
import { makeHerdAnimal } from '../make/herd-animal.ts';

const NOW = 2000 * DAY_MS;
const before = makeHerdAnimal({ id: 'a', name: 'Anna', visualTags: ['12'], pen: null });
const other = makeHerdAnimal({
  id: 'b',
  name: 'Berta',
  tag: '840003123456780',
  visualTags: ['7B'],
  pen: 'south',
  inMilk: true,
  bredAtMs: 90 * DAY_MS,
});

function merged(name: 'kept' | 'gone' = 'kept'): { kept: HerdAnimal; gone: HerdAnimal } {
  const result = mergeAnimals(before, other, { name, tag: 'gone' }, NOW, 'Ida');
  if (!result.ok) throw new Error(result.why);
  return result;
}

describe('parting two records that were merged', () => {
  test.each(['kept', 'gone'] as const)('gives both back as they were (name of the one %s)', (name) => {
    const { kept, gone } = merged(name);
    expect(partAnimals(kept, gone, { before, after: kept }, [kept, gone])).toEqual({
      ok: true,
      kept: before,
      gone: other,
    });
  });

  test('leaves what was edited since', () => {
    const { kept, gone } = merged();
    const edited = { ...kept, pen: 'north', visualTags: ['12', '7B', '99'] };
    expect(partAnimals(edited, gone, { before, after: kept }, [edited, gone])).toMatchObject({
      kept: { pen: 'north', visualTags: ['12', '99'], tag: before.tag, bredAtMs: null },
    });
  });

  const { kept, gone } = merged();
  const third = makeHerdAnimal({ id: 'c', name: 'Cora', tag: null });
  test.each([
    ['not-merged', kept, { ...gone, life: { kind: 'present' } } as const, []],
    ['not-merged', { ...kept, id: 'z' }, gone, []],
    ['gone', { ...kept, life: { kind: 'died', atMs: NOW, by: 'Ida' } } as const, gone, []],
    ['name-in-use', kept, gone, [{ ...third, name: 'berta' }]],
    ['worn-by-another', kept, gone, [{ ...third, tag: before.tag }]],
    ['worn-by-another', { ...kept, tag: '840003123456000' }, { ...gone, tag: '840003123456000' }, []],
  ] as const)('is refused: %s', (why, first, second, others) => {
    expect(partAnimals(first, second, { before, after: kept }, [first, second, ...others])).toEqual({
      ok: false,
      why,
    });
  });
});
