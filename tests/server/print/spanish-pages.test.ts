import { expect, test } from 'vitest';
import { medicineById } from '../../../core/medicine/formulary.ts';
import { calendarEvents } from '../../../server/exports/calendar-events.ts';
import { CALENDAR_WORDS } from '../../../server/exports/calendar-words.ts';
import { GROUP_WORDS } from '../../../server/print/group-words.ts';
import { PRINT_WORDS } from '../../../server/print/print-words.ts';
import { REGISTER_WORDS } from '../../../server/print/register-words.ts';
import type { ScreenLanguage } from '../../../shared/language.ts';
import { makeJug } from '../../core/make/jug.ts';
import { testApp } from '../make/test-app.ts';
import { bringToOffer, GOAT, type TestBarn, testBarn } from '../make/test-barn.ts';

const PAGES = ['/print/jug/jug-7', '/print/group/jug-7', '/print/register', '/print/jug/no-such'];
/** What people and animals of the farm are called. */
const NAMES = [GOAT.name, 'Campion', 'Wren', 'Finch'];
/** The one word that is the same in both languages. */
const ALIKE = 'Animal';
/** Words that no Spanish sentence holds. */
const ENGLISH =
  /\b(?:the|of|and|not|by|at|for|with|never|until|mixed|dose|weight|milk|meat|jug|above|label|drench|bottle|samples|again|given|wrong|part|days|hours)\b/i;

/** A farm with one dose given in part, corrected twice, and a jug to print. */
function farm(language: ScreenLanguage): TestBarn {
  const barn = testBarn();
  const offerId = bringToOffer(barn);
  barn.send({ type: 'give', offerId, outcome: 'part', leftMl: 1 });
  const [entry] = barn.store.dayBook.newest(1);
  const treatmentId = entry?.treatment.id ?? '';
  barn.send({ type: 'correct', treatmentId, what: { kind: 'wrong-volume', volumeMl: 2 } });
  const { context } = barn.barn;
  context.memory = {
    ...context.memory,
    jugs: [
      ...context.memory.jugs,
      makeJug({ mixedAtMs: barn.clock.wallMs, useByMs: barn.clock.wallMs + 3_600_000 }),
    ],
    settings: { ...context.memory.settings, language },
  };
  return barn;
}

/** The texts of a page, without what is no word of it. */
function textsOf(page: string): string[] {
  return page
    .replace(/<style>.*?<\/style>/gs, '')
    .split(/<[^>]*>/)
    .map((text) =>
      text
        .replace(/&[a-z]+;/g, ' ')
        .replace(/\s+/g, ' ')
        .trim(),
    )
    .filter((text) => /\p{L}{3}/u.test(text) && !NAMES.includes(text));
}

async function pages(language: ScreenLanguage): Promise<Map<string, string>> {
  const { app } = await testApp(null, farm(language));
  const found = new Map<string, string>();
  for (const url of PAGES)
    found.set(url, (await app.inject({ url, headers: { host: 'localhost:4180' } })).body);
  await app.close();
  return found;
}

test('no page that prints says anything in English where the screen is Spanish', async () => {
  const [english, spanish] = [await pages('en'), await pages('es')];
  for (const url of PAGES) {
    const before = new Set(textsOf(english.get(url) ?? ''));
    const texts = textsOf(spanish.get(url) ?? '');
    expect(texts.length, url).toBeGreaterThan(3);
    expect(
      texts.filter((text) => (before.has(text) && text !== ALIKE) || ENGLISH.test(text)),
      url,
    ).toEqual([]);
    expect(spanish.get(url)).toContain('<html lang="es">');
  }
});

test('the words that look for English find it on the English pages', async () => {
  for (const [url, page] of await pages('en'))
    expect(textsOf(page).filter((text) => ENGLISH.test(text)).length, url).toBeGreaterThan(0);
});

test('the calendar reminds in Spanish', () => {
  const events = calendarEvents(farm('es').barn.context);
  expect(events.length).toBeGreaterThan(2);
  for (const { summary, description } of events) expect(`${summary} ${description}`).not.toMatch(ENGLISH);
});

test('what ships is named in Spanish', async () => {
  const page = (await pages('es')).get('/print/jug/jug-7') ?? '';
  const active = medicineById(farm('es').barn.context.memory.formulary, 'levamisole')?.active ?? '';
  expect(page).not.toContain(active);
  expect(page).toContain('levamisol HCl');
});

test.each([
  [0, '0 tratamientos.'],
  [1, '1 tratamiento.'],
  [2, '2 tratamientos.'],
])('counts have the number Spanish asks for: %i', (count, said) => {
  expect(REGISTER_WORDS.es.count(count)).toBe(said);
});

/** Every plain word of a catalogue, with its place. */
function leaves(value: unknown, path: string): [string, string][] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, `${path}.${key}`));
}

test.each([
  ['labels', PRINT_WORDS],
  ['groups', GROUP_WORDS],
  ['the register', REGISTER_WORDS],
  ['the calendar', CALENDAR_WORDS],
])('no plain word of %s was left in English', (_, { en, es }) => {
  const english = new Map(leaves(en, 'words'));
  const same = leaves(es, 'words').filter(([path, word]) => english.get(path) === word);
  expect(same.filter(([, word]) => word !== ALIKE)).toEqual([]);
});
