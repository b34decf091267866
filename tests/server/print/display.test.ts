import { expect, test } from 'vitest';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { REFUSAL_WORDS } from '../../../server/barn/refusal-words.ts';
import { displayFaults, dosesIn } from '../../oracles/display-faults.ts';
import { printBarn } from '../make/print-barn.ts';
import { testApp } from '../make/test-app.ts';

/** The words of a page, one piece of text a line. */
function lines(page: string): string[] {
  return page
    .replaceAll(/<(style|script)[\s\S]*?<\/\1>/g, '')
    .replaceAll(/<\/?(b|small)>/g, '')
    .split(/<[^>]+>/)
    .map((text) => text.trim())
    .filter((text) => text !== '');
}

test.each([
  ['kg', 'a6', 49.453],
  ['lb', 'a6', 24.727],
  ['kg', 'roll', 181.5],
  ['lb', 'roll', 1.25],
] as const)('every dose printed in %s on %s at %d mg/mL keeps the rules', async (unit, paper, strength) => {
  const barn = printBarn({ strength: mgPerMl(strength), volume: millilitres(3785.4) });
  const { context } = barn.barn;
  context.memory = { ...context.memory, settings: { ...context.memory.settings, weightUnit: unit } };
  const { app } = await testApp(null, barn);
  const { body } = await app.inject({
    url: `/print/jug/jug-7?paper=${paper}`,
    headers: { host: 'localhost:4180' },
  });
  await app.close();
  const all = lines(body);
  expect(all.reduce((sum, text) => sum + dosesIn(text), 0)).toBeGreaterThan(30);
  expect(all.flatMap(displayFaults)).toEqual([]);
});

test('no refusal breaks the rules', () => {
  const words = Object.values(REFUSAL_WORDS);
  expect(words.length).toBeGreaterThan(20);
  expect(words.flatMap(displayFaults)).toEqual([]);
});
