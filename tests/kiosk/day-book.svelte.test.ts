import { expect, test } from 'vitest';
import { openScene } from './open-scene.ts';
import { SCENES } from './preview/scenes.ts';
import { textOf } from './text-of.ts';

async function rowsOf(name: string): Promise<string[]> {
  const scene = SCENES.find((candidate) => candidate.name === name);
  if (scene === undefined) throw new Error(`no scene is called ${name}`);
  const app = await openScene(scene);
  const rows = [...document.querySelectorAll('[data-testid^="daybook-"]')].map(textOf);
  await app.close();
  return rows;
}

test('the day book lists what stands, and what it was; skips stand between', async () => {
  const [, skipped, volume] = await rowsOf('daybook-skips-too');
  expect(skipped).toMatch(/Juniper.*skipped\s*not needed/s);
  expect(volume).toMatch(/10\.1 mL\s*was 11\.3 mL/);
  const [notGiven, animal] = await rowsOf('daybook-corrected');
  expect(notGiven).toMatch(/not given\s*was 11\.3 mL/);
  expect(animal).toMatch(/Juniper\s*was Old Bramble/);
});
