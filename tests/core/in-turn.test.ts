import { expect, test } from 'vitest';
import { oneAtATime } from '../../core/in-turn.ts';

test('begins a piece of work when the one before has ended, well or not, and tells each asker of its own', async () => {
  const inTurn = oneAtATime();
  const seen: string[] = [];
  const work = (name: string, fails = false) =>
    inTurn(async () => {
      seen.push(`${name} begins`);
      await Promise.resolve();
      seen.push(`${name} ends`);
      if (fails) throw new Error(name);
      return name;
    });
  const [one, two, three] = [work('one'), work('two', true), work('three')];
  await expect(one).resolves.toBe('one');
  await expect(two).rejects.toThrow('two');
  await expect(three).resolves.toBe('three');
  expect(seen).toEqual(['one begins', 'one ends', 'two begins', 'two ends', 'three begins', 'three ends']);
});
