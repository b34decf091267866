import { expect, test } from 'vitest';
import { comparedWith } from './compare.ts';

const figure = (what: string, ratio: number) => ({ title: 'Dosing', what, ratio, against: 'a', raw: 'b' });

test('two runs of the bench are held against each other figure by figure', () => {
  const before = [
    figure('one', 1),
    figure('two', 2),
    figure('three', 3),
    { ...figure('x', 1), title: 'Page' },
  ];
  const now = [figure('one', 1.1), figure('two', 3), figure('four', 4)];
  expect(comparedWith(before, now).map(({ what, became }) => [what, became])).toEqual([
    ['one', 'the same'],
    ['two', 'more'],
    ['four', 'new'],
    ['three', 'gone'],
  ]);
});

test('a ratio that fell is told too', () => {
  expect(comparedWith([figure('one', 2)], [figure('one', 1)])).toMatchObject([{ became: 'less' }]);
});
