import { DAY_MS } from '../../../core/moment.ts';
import { withEntry } from '../../../server/barn/memory.ts';
import type { Store } from '../../../server/store/store.ts';
import { animalPage } from '../../../server/view/animal-page.ts';
import { stateView } from '../../../server/view/state-view.ts';
import { quietSpeaker } from '../../server/make/quiet.ts';
import { testBarn } from '../../server/make/test-barn.ts';
import { animalId, END_MS, TEN_YEARS, YEARS_MS } from './years.ts';

/** Milliseconds a query takes: the median, and the time that 99 of 100 keep under; and the rows it brought on average. */
export interface Timed {
  readonly p50: number;
  readonly p99: number;
  readonly rows: number;
}

/** How long a kiosk takes with one file: to start, and for each of its screens. */
export interface Measured {
  readonly startMs: number;
  readonly screens: ReadonlyMap<string, Timed>;
}

const TIMES = 600;
/** Records asked for one by one are among so many of the newest, which the smallest share has too. */
const AMONG = 9000;

/** Opens a file of the bench that holds a share of the ten years as the kiosk does, and times what each screen asks. */
export function measureYears(path: string, share: number): Measured {
  const began = performance.now();
  const { barn, store, clock } = testBarn(path);
  const { context } = barn;
  clock.wallMs = END_MS;
  const voice = quietSpeaker(context).view;
  const standing = { bootId: 'b', demo: false, problem: null, devices: () => [], voice };
  stateView(context, standing);
  const startMs = performance.now() - began;
  const asks = {
    ...questions(store, END_MS - (share * YEARS_MS) / 2),
    'page of an animal': (i: number) => animalPage(context, animalId(i % TEN_YEARS.animals)),
    'whole state, nothing changed': () => stateView(context, standing),
    ...afterwards(context, store),
    'whole state after a dose': (i: number) => {
      context.memory = withEntry(context.memory, store, someRecord(store.dayBook, i));
      return stateView(context, standing);
    },
  };
  const screens = new Map(Object.entries(asks).map(([name, ask]) => [name, timed(ask)]));
  store.close();
  return { startMs, screens };
}

/** A record among the newest, another one every time. */
function someRecord(dayBook: Store['dayBook'], i: number) {
  const [newest] = dayBook.newest(1);
  const [entry] = dayBook.below((newest?.sequence ?? 0) + 1 - ((i * 7001) % AMONG), 1);
  if (entry === undefined) throw new Error('the file has too few records to be measured');
  return entry;
}

/** What memory reads anew once a dose or a correction is written. */
function afterwards(
  { memory }: ReturnType<typeof testBarn>['barn']['context'],
  store: Store,
): Record<string, (i: number) => unknown> {
  const [newest, ...others] = memory.recent;
  if (newest === undefined) throw new Error('the file has no records to be measured');
  const before = { ...memory, recent: others };
  const entries = Array.from({ length: TIMES }, (_, i) => someRecord(store.dayBook, i));
  return {
    'after a dose: what follows': () => withEntry(before, store, newest),
    'after a correction: what follows': (i) => withEntry(memory, store, entries[i] ?? newest),
  };
}

/** What the screens ask of the disk; `middleMs` is halfway through the file. */
function questions(
  { dayBook, weighings, jugs }: Store,
  middleMs: number,
): Record<string, (i: number) => unknown> {
  const animal = (i: number) => animalId((i * 37) % TEN_YEARS.animals);
  const MONTH = { fromMs: END_MS - 30 * DAY_MS };
  const middle = { filedAtMs: middleMs, line: 0 };
  const lastJug = jugs.below(Number.MAX_SAFE_INTEGER, 1)[0]?.number ?? 0;
  return {
    'cautions: earlier doses of an animal': (i) => dayBook.earlierDoses(animal(i)),
    'board: what keeps an animal back': (i) => dayBook.keepingBack(animal(i)),
    'growth: weights of an animal': (i) => weighings.newest(animal(i), 200),
    'platform: what is left in a jug': (i) => jugs.below(lastJug - (i % 90), 1),
    'day book: newest page': () => dayBook.page({}, null, 12),
    'day book: a page halfway back': () => dayBook.page({}, middle, 12),
    'day book: an animal': (i) => dayBook.page({ animalId: animal(i) }, null, 12),
    'day book: a medicine': () => dayBook.page({ medicineId: 'ivermectin' }, null, 12),
    'day book: a person': () => dayBook.page({ by: 'Rook' }, null, 12),
    'day book: a medicine by a person': () =>
      dayBook.page({ medicineId: 'ivermectin', by: 'Rook' }, null, 12),
    'day book: an animal and a medicine': (i) =>
      dayBook.page({ animalId: animal(i), medicineId: 'levamisole' }, null, 12),
    'day book: the same, two rows': (i) =>
      dayBook.page({ animalId: animal(i), medicineId: 'levamisole' }, null, 2),
    'day book: an animal, a medicine it never had': (i) =>
      dayBook.page({ animalId: animal(i), medicineId: 'monepantel' }, null, 12),
    'day book: the last 30 days': () => dayBook.page(MONTH, null, 12),
    'day book: skips': () => dayBook.page({ kind: 'skipped' }, null, 12),
    'day book: corrections': () => dayBook.page({ kind: 'corrected' }, null, 12),
    'day book: one record': (i) => someRecord(dayBook, i),
  };
}

function timed(ask: (i: number) => unknown): Timed {
  const times: number[] = [];
  let rows = 0;
  for (let i = 0; i < TIMES; i += 1) {
    const from = performance.now();
    const answer = ask(i);
    times.push(performance.now() - from);
    rows += Array.isArray(answer) ? answer.length : 1;
  }
  times.sort((a, b) => a - b);
  const at = (share: number) => times[Math.floor(share * times.length)] ?? Number.NaN;
  return { p50: at(0.5), p99: at(0.99), rows: rows / TIMES };
}
