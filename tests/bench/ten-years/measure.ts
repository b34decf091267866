import { DAY_MS } from '../../../core/moment.ts';
import { withEntry } from '../../../server/barn/memory.ts';
import type { Store } from '../../../server/store/store.ts';
import { animalPage } from '../../../server/view/animal-page.ts';
import { stateView } from '../../../server/view/state-view.ts';
import { quietStanding } from '../../server/make/quiet.ts';
import { testBarn } from '../../server/make/test-barn.ts';
import { animalId, END_MS, TEN_YEARS, YEARS_MS } from './years.ts';

/** Milliseconds a query takes: the median, and the time that 99 of 100 keep under; and the rows it brought on average. */
export interface Timed {
  readonly p50: number;
  readonly p99: number;
  readonly rows: number;
}

/** The same question asked of both files. */
export interface Asked {
  readonly what: string;
  readonly small: Timed;
  readonly whole: Timed;
}

/** A file of the bench with the share of the ten years that it holds. */
export interface YearsFile {
  readonly path: string;
  readonly share: number;
}

const TIMES = 600;
/** Asked so often before the clock runs, so that neither file pays for code that is not compiled yet. */
const WARM = 40;
/** Records asked for one by one are among so many of the newest, which the smallest share has too. */
const AMONG = 9000;

/** Milliseconds until the kiosk has opened a file and worked out its first state. */
export function startOf(file: YearsFile): number {
  const began = performance.now();
  const kiosk = opened(file);
  kiosk.state();
  const took = performance.now() - began;
  kiosk.store.close();
  return took;
}

/**
 * Opens both files as the kiosk does, and times what each screen asks: of one and of the other in turn, so that whatever
 * else the machine does meanwhile falls on both alike.
 */
export function measureYears(small: YearsFile, whole: YearsFile): Asked[] {
  const kiosks = [opened(small), opened(whole)] as const;
  const [ofSmall, ofWhole] = [kiosks[0].asks(), kiosks[1].asks()];
  const asked = Object.entries(ofWhole).map(([what, ask]): Asked => {
    const times = timed([ofSmall[what] ?? ask, ask]);
    return { what, small: times[0], whole: times[1] };
  });
  for (const { store } of kiosks) store.close();
  return asked;
}

type Ask = (i: number) => unknown;

function opened({ path, share }: YearsFile) {
  const { barn, store, clock } = testBarn(path);
  const { context } = barn;
  clock.wallMs = END_MS;
  const standing = quietStanding(context);
  const state = () => stateView(context, standing);
  return {
    store,
    state,
    asks: (): Record<string, Ask> => ({
      ...questions(store, END_MS - (share * YEARS_MS) / 2),
      'page of an animal': (i) => animalPage(context, animalId(i % TEN_YEARS.animals)),
      'whole state, nothing changed': state,
      ...afterwards(context, store),
      'whole state after a dose': (i) => {
        context.memory = withEntry(context.memory, store, someRecord(store.dayBook, i));
        return state();
      },
    }),
  };
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
): Record<string, Ask> {
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
function questions({ dayBook, weighings, jugs }: Store, middleMs: number): Record<string, Ask> {
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

function timed(asks: readonly [Ask, Ask]): readonly [Timed, Timed] {
  const times: readonly [number[], number[]] = [[], []];
  const rows: [number, number] = [0, 0];
  for (let i = -WARM; i < TIMES; i += 1) {
    for (const which of [0, 1] as const) {
      const from = performance.now();
      const answer = asks[which](i + WARM);
      const took = performance.now() - from;
      if (i < 0) continue;
      times[which].push(took);
      rows[which] += Array.isArray(answer) ? answer.length : 1;
    }
  }
  const told = (which: 0 | 1): Timed => {
    const sorted = times[which].sort((a, b) => a - b);
    const at = (share: number) => sorted[Math.floor(share * sorted.length)] ?? Number.NaN;
    return { p50: at(0.5), p99: at(0.99), rows: rows[which] / TIMES };
  };
  return [told(0), told(1)];
}
