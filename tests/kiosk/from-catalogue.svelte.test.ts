import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { CURRENCIES } from '../../core/stock/money.ts';
import { enWhole } from '../../kiosk/words/en-whole.ts';
import { LANGUAGES } from '../../kiosk/words/languages.ts';
import { openScene } from './open-scene.ts';
import { MARKS, pseudoWords } from './preview/pseudo-words.ts';
import type { Scene } from './preview/scene.ts';
import { SCENES } from './preview/scenes.ts';
import { soon } from './soon.ts';

const pseudo = pseudoWords(enWhole);
/** Fields of state and answers that hold what people, label or device wrote, and so are shown as they are. */
const DATA = new Set(
  `name names animalName person people by vet vets source file column columns value line lines text profile path
   lot tag visual numbers pen keep detail field remedy says symptom heaviest lightest currency unknown unknownColumns
   url folder address letter kept gone id label title formularyTrouble sample device
   say sentence words animal place places others`.split(/\s+/),
);
/** Units and signs, which are the same in every language, and the languages by their own names. */
const ALIKE = /(?<!\p{L})(?:kg|lb|oz|mg|mL|g|L|kB|mm|in|baud|English|Español|CSV)(?!\p{L})/gu;
/** Currencies are named by the browser. */
const CURRENCIES_NAMED = new Intl.DisplayNames(pseudo.locale, { type: 'currency' });
/** Where a person spells or searches, what was tapped is shown; zones go by the names of their cities everywhere. */
const TYPED = '[data-testid="spelled"], [data-testid="prefix"], [data-testid="fingerprint"], [data-zone]';
const DATES = /\b(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun|Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sept?|Oct|Nov|Dec)\b/g;

beforeAll(() => {
  for (const each of [LANGUAGES.es.first, LANGUAGES.es.whole]) {
    vi.spyOn(each, 'get').mockResolvedValue(pseudo);
    vi.spyOn(each, 'part', 'get').mockReturnValue(pseudo);
  }
});
afterAll(() => {
  vi.restoreAllMocks();
});

/** The texts on the page, without what stands between the marks. */
function unmarked(): string[] {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const texts: string[] = [];
  while (walker.nextNode()) {
    const { currentNode } = walker;
    if (currentNode.parentElement?.closest(TYPED) == null) texts.push(currentNode.textContent ?? '');
  }
  return texts.map((text) => {
    let depth = 0;
    let rest = '';
    for (const sign of text) {
      if (sign === MARKS[0]) depth += 1;
      else if (sign === MARKS[1]) depth -= 1;
      else if (depth === 0) rest += sign;
    }
    return rest;
  });
}

/** The ways the name of a port may be shown. */
function portNames(name: string): string[] {
  const plain = name.replace(/^usb-/, '').replace(/-if\d+.*$/, '');
  return [name, plain, plain.replaceAll('_', ' ')];
}

/** What a scene holds of other people's words, the longest first. */
function dataOf({ state, later = {}, http = {} }: Scene): string[] {
  const found = new Set<string>();
  const walk = (value: unknown, key: string): void => {
    if (typeof value === 'string') {
      if (!DATA.has(key) || value.length < 2) return;
      found.add(value);
      // Of a device the last part of its path is shown, the words in it apart.
      const last = value.split('/').at(-1) ?? '';
      if (last.length > 1) for (const each of portNames(last)) found.add(each);
    } else if (Array.isArray(value)) for (const each of value) walk(each, key);
    else if (typeof value === 'object' && value !== null)
      for (const [inner, each] of Object.entries(value)) walk(each, inner);
  };
  walk(state, '');
  walk(later, '');
  walk(http, '');
  for (const currency of CURRENCIES) found.add(CURRENCIES_NAMED.of(currency) ?? '').add(currency);
  return [...found].sort((a, b) => b.length - a.length);
}

/** Words on the page that no catalogue gave and nobody wrote. */
function strangers(scene: Scene): string[] {
  const data = dataOf(scene);
  return unmarked()
    .map((text) => data.reduce((rest, known) => rest.replaceAll(known, ' '), text))
    .map((text) => text.replace(ALIKE, ' ').replace(DATES, ' '))
    .filter((text) => /\p{L}{2}/u.test(text))
    .map((text) => text.trim());
}

test.each(SCENES)('all words of $name are from the catalogue', async (scene) => {
  const spanish = { ...scene, state: { ...scene.state, language: 'es' as const } };
  const app = await openScene(spanish);
  try {
    await soon(() => expect(document.body.textContent).toContain(MARKS[0]));
    expect(strangers(spanish)).toEqual([]);
  } finally {
    await app.close();
  }
});

test('a word that is not from the catalogue is found', async () => {
  const scene = SCENES.find(({ name }) => name === 'home');
  if (scene === undefined) throw new Error('there is no such scene');
  const app = await openScene(scene);
  expect(strangers(scene)).not.toEqual([]);
  await app.close();
});
