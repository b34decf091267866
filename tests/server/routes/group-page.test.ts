import { describe, expect, test } from 'vitest';
import { kilograms } from '../../../core/quantity/mass.ts';
import { makeHerdAnimal } from '../../core/make/herd-animal.ts';
import { displayFaults, dosesIn } from '../../oracles/display-faults.ts';
import { printBarn } from '../make/print-barn.ts';
import { testApp } from '../make/test-app.ts';
import type { TestBarn } from '../make/test-barn.ts';

const DAY = 86_400_000;

/** Goats of three sizes, one never weighed, one weighed long ago, and jug 7 in service. */
function herdBarn(): TestBarn {
  const test_ = printBarn();
  const { context } = test_.barn;
  const now = context.clock.now().wallMs;
  const goat = (id: string, kg: number, days = 2) =>
    makeHerdAnimal({
      id,
      name: `Goat ${id}`,
      tag: null,
      lastWeight: { mass: kilograms(kg), atMs: now - days * DAY },
    });
  const [jug] = context.memory.jugs;
  if (jug === undefined) throw new Error('the barn has no jug');
  context.memory = {
    ...context.memory,
    jugs: [{ ...jug, mixedAtMs: now - 3_600_000, useByMs: now + DAY }],
    animals: [
      goat('big', 80),
      goat('doe', 42),
      goat('dam', 38),
      goat('kid', 12),
      goat('old', 40, 60),
      makeHerdAnimal({ id: 'new', name: 'Goat new', tag: null, lastWeight: null }),
    ],
  };
  return test_;
}

async function page(url: string, test_ = herdBarn()) {
  const { app } = await testApp(null, test_);
  const response = await app.inject({ url, headers: { host: 'localhost:4180' } });
  await app.close();
  return { ...response, text: response.body.replaceAll(/<style[\s\S]*?<\/style>/g, '') };
}

/** The names in each section of the page, in their order. */
function sections(text: string): string[][] {
  return text
    .split('<section')
    .slice(1)
    .map((section) => [...section.matchAll(/<th>(.*?)<\/th>/g)].map(([, name]) => name ?? ''))
    .filter((names) => names.length > 0);
}

describe('the page of groups', () => {
  test('puts animals of like weight together and the others apart, and says why one is in none', async () => {
    const { text, statusCode } = await page('/print/group/jug-7');
    expect(statusCode).toBe(200);
    expect(sections(text)).toEqual([
      ['Goat big'],
      ['Goat doe', 'Goat dam'],
      ['Goat kid'],
      ['Goat old', 'Goat new'],
    ]);
    expect(text).toContain('last weight is too old: weigh it');
    expect(text).toContain('never weighed: weigh it');
    expect(text).toContain('Nothing is logged here');
  });

  test('gives each group the dose of its heaviest', async () => {
    const { text } = await page('/print/group/jug-7');
    const volumes = [...text.matchAll(/class="strength">(.*?)</g)].map(([, volume]) => volume);
    expect(volumes).toHaveLength(3);
    // 42 kg at 12 mg/kg of 49.453 mg/mL is 10.19 mL.
    expect(volumes[1]).toBe('10.2 mL');
  });

  test('leaves out whom a tap left out, and takes it in again', async () => {
    const first = await page('/print/group/jug-7');
    expect(first.text).toContain('href="?paper=a6&amp;without=doe"');
    const { text } = await page('/print/group/jug-7?without=doe');
    expect(sections(text)).toEqual([
      ['Goat big'],
      ['Goat dam'],
      ['Goat kid'],
      ['Goat doe', 'Goat old', 'Goat new'],
    ]);
    expect(text).toContain('href="?paper=a6&amp;without="');
  });

  test('has nobody whom a stop forbids', async () => {
    const test_ = herdBarn();
    const { memory } = test_.barn.context;
    test_.barn.context.memory = { ...memory, jugs: memory.jugs.map((jug) => ({ ...jug, useByMs: 0 })) };
    const { text } = await page('/print/group/jug-7', test_);
    expect(text).not.toContain('class="strength"');
    expect(text).toContain('stop: jug past use by');
  });

  test('without an approved rule has no group and says what to do', async () => {
    const test_ = herdBarn();
    test_.barn.context.memory = { ...test_.barn.context.memory, approvals: [] };
    const { text } = await page('/print/group/jug-7', test_);
    expect(sections(text)).toEqual([]);
    expect(text).toContain('approve a rule at Shed');
  });

  test('keeps the display rules', async () => {
    const { text } = await page('/print/group/jug-7');
    const lines = text.replaceAll(/<\/?(b|small)>/g, '').split(/<[^>]+>/);
    expect(lines.reduce((sum, line) => sum + dosesIn(line), 0)).toBeGreaterThan(5);
    expect(lines.flatMap(displayFaults)).toEqual([]);
  });

  test('is reached from the page of the jug, and is of no jug that is not there', async () => {
    expect((await page('/print/jug/jug-7')).text).toContain('href="/print/group/jug-7?paper=a6"');
    expect((await page('/print/group/none')).statusCode).toBe(404);
  });
});
