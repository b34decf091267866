import { expect, test } from 'vitest';
import { keepTogether } from '../../kiosk/words/keep-together.ts';

test('a number and its unit stand in one line, in plain phrases and in those that are made', () => {
  const words = keepTogether({
    plain: 'a packet of 52 g',
    made: (ml: number) => `${ml} mL at 49.45 mg/mL, to 1.5 %`,
    within: { lines: ['2 goats', '5 gates', '11 g'] },
  });
  expect(words.plain).toBe('a packet of 52\u00a0g');
  expect(words.made(904)).toBe('904\u00a0mL at 49.45\u00a0mg/mL, to 1.5\u00a0%');
  expect(words.within.lines).toEqual(['2 goats', '5 gates', '11\u00a0g']);
});
