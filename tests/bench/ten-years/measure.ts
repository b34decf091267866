import { DAY_MS } from '../../../core/moment.ts';
import { withEntry } from '../../../server/barn/memory.ts';
import type { Store } from '../../../server/store/store.ts';
import { animalPage } from '../../../server/view/animal-page.ts';
import { stateView } from '../../../server/view/state-view.ts';
import { quietSpeaker } from '../../server/make/quiet.ts';
import { testBarn } from '../../server/make/test-barn.ts';
import { animalId, END_MS, TEN_YEARS } from './build.ts';

/** Milliseconds a query takes: the median, and the time that 99 of 100 keep under. */
export interface Timed {
  readonly p50: number;
  readonly p99: number;
}

/** How long a kiosk takes with one file: to start, and for each of its screens. */
export interface Measured {
  readonly startMs: number;
  readonly screens: ReadonlyMap<string, Timed>;
}

const TIMES = 600;

/** Opens a file of the bench as the kiosk does, and times what each screen asks of it. */
export function measureYears(path: string): Measured {
  const began = performance.now();
  const { barn, store, clock } = testBarn(path);
  const { memory } = barn.context;
  clock.wallMs = END_MS;
  const standing = {
    bootId: 'b',
    demo: false,
    problem: null,
    devices: () => [],
    voice: quietSpeaker(barn.context).view,
  };
  stateView(barn.context, standing);
  const startMs = performance.now() - began;
  const screens = new Map<string, Timed>();
  for (const [name, ask] of Object.entries(questions(store))) screens.set(name, timed(ask));
  screens.set(
    'whole state, nothing changed',
    timed(() => stateView(barn.context, standing)),
  );
  screens.set(
    'page of an animal',
    timed((i) => animalPage(barn.context, animalId(i % TEN_YEARS.animals))),
  );
  screens.set(
    'after a dose or a correction: what follows',
    timed((i) => {
      const [entry] = store.dayBook.below(1 + ((i * 7001) % 9000) + 900, 1);
      return entry === undefined ? undefined : withEntry(memory, store, entry);
    }),
  );
  store.close();
  return { startMs, screens };
}

/** What the screens ask of the disk; `undefined` where that brings nothing back. */
function questions({ dayBook, weighings, jugs }: Store): Record<string, (i: number) => unknown> {
  const animal = (i: number) => animalId((i * 37) % TEN_YEARS.animals);
  const some = <T>(rows: readonly T[]) => (rows.length > 0 ? rows : undefined);
  const MONTH = { fromMs: END_MS - 30 * DAY_MS };
  const MIDDLE = { filedAtMs: END_MS - 1800 * DAY_MS, line: 0 };
  return {
    'cautions: earlier doses of an animal': (i) => some(dayBook.earlierDoses(animal(i))),
    'board: what keeps an animal back': (i) => some(dayBook.keepingBack(animal(i))),
    'growth: weights of an animal': (i) => some(weighings.newest(animal(i), 200)),
    'platform: what is left in a jug': (i) => some(jugs.below(2 + (i % 90), 1)),
    'day book: newest page': () => some(dayBook.page({}, null, 12)),
    'day book: a page five years back': () => some(dayBook.page({}, MIDDLE, 12)),
    'day book: an animal': (i) => some(dayBook.page({ animalId: animal(i) }, null, 12)),
    'day book: a medicine': () => some(dayBook.page({ medicineId: 'ivermectin' }, null, 12)),
    'day book: a person': () => some(dayBook.page({ by: 'Rook' }, null, 12)),
    'day book: a medicine by a person': () =>
      some(dayBook.page({ medicineId: 'ivermectin', by: 'Rook' }, null, 12)),
    'day book: an animal and a medicine': (i) =>
      some(dayBook.page({ animalId: animal(i), medicineId: 'levamisole' }, null, 12)),
    'day book: the last 30 days': () => some(dayBook.page(MONTH, null, 12)),
    'day book: skips': () => some(dayBook.page({ kind: 'skipped' }, null, 12)),
    'day book: corrections': () => some(dayBook.page({ kind: 'corrected' }, null, 12)),
    'day book: one record': (i) => some(dayBook.below(2 + ((i * 7001) % 9000), 1)),
  };
}

function timed(ask: (i: number) => unknown): Timed {
  const times: number[] = [];
  let answered = 0;
  for (let i = 0; i < TIMES; i += 1) {
    const from = performance.now();
    const answer = ask(i);
    times.push(performance.now() - from);
    if (answer !== undefined && answer !== null) answered += 1;
  }
  if (answered === 0) throw new Error('a question brought nothing back, so nothing was measured');
  times.sort((a, b) => a - b);
  const at = (share: number) => times[Math.floor(share * times.length)] ?? Number.NaN;
  return { p50: at(0.5), p99: at(0.99) };
}
