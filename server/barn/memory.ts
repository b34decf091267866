import type { ScaleCheckRecord } from '../../core/checking/check-record.ts';
import { NO_CHECK } from '../../core/checking/scale-check.ts';
import type { ScaleCheck } from '../../core/checking/scale-check-state.ts';
import { type ScaleChecking, USUAL_CHECK_DAYS } from '../../core/checking/standing.ts';
import { NO_SYRINGE_CHECK } from '../../core/checking/syringe-check.ts';
import type { SyringeCheck, SyringeCheckRecord } from '../../core/checking/syringe-check-state.ts';
import type { EarlierDose } from '../../core/dosing/repeats.ts';
import { SYRINGE_CATALOGUE, type Syringe } from '../../core/dosing/syringe.ts';
import { type HerdAnimal, isPresent } from '../../core/herd/herd-animal.ts';
import type { Mixing } from '../../core/jug/state.ts';
import { IDLE_MIXING } from '../../core/jug/world.ts';
import type { Approval } from '../../core/medicine/approval.ts';
import type { Formulary } from '../../core/medicine/formulary.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import type { Vessel } from '../../core/mixing/vessel.ts';
import { millilitres } from '../../core/quantity/volume.ts';
import type { ReductionTest } from '../../core/reduction/reduction-test.ts';
import { animalsNamed, type DayBookEntry } from '../../core/round/day-book.ts';
import { FRESH_ROUND, type Round } from '../../core/round/state.ts';
import { type StockLot, tally } from '../../core/stock/lot.ts';
import { type Bench, BLANK_BENCH } from '../../core/weighing/bench.ts';
import { BLANK_DECK, type Deck } from '../../core/weighing/deck.ts';
import type { ScaleRole } from '../../core/weighing/reading.ts';
import type { EggEntry } from '../../core/worms/egg-record.ts';
import type { OwnThreshold } from '../../core/worms/farm-rules.ts';
import { USUAL_EAR } from '../../shared/ear.ts';
import { NOTHING_OWN, type OwnMedicines } from '../formulary/own-medicines.ts';
import { lastWeightOf } from '../herd/history.ts';
import type { NumberedEntry } from '../store/book-records.ts';
import type { Touched } from '../store/receive-records.ts';
import type { AnimalScores } from '../store/scores.ts';
import type { Settings } from '../store/settings.ts';
import type { Store } from '../store/store.ts';

/** All that the server holds in memory; replaced part by part, never changed in place, so that it can be put back. */
export interface Memory {
  readonly deck: Deck;
  readonly bench: Bench;
  readonly round: Round;
  readonly mixing: Mixing;
  readonly check: ScaleCheck;
  /** The platform while it is being checked: a dead weight stands on it, no animal. */
  readonly deadWeight: Bench;
  readonly syringeCheck: SyringeCheck;
  /** The last finished check of each scale. */
  readonly scaleChecks: Readonly<Record<ScaleRole, ScaleCheckRecord | null>>;
  /** The last finished check of each syringe that has one. */
  readonly syringeChecks: readonly SyringeCheckRecord[];
  /** The animals on the farm, by name. */
  readonly animals: readonly HerdAnimal[];
  /** Those that were sold, died or were merged into another record. */
  readonly gone: readonly HerdAnimal[];
  /** The preview of a herd file that was last written. */
  readonly takenIn: { readonly preview: string; readonly animals: number } | null;
  /** The preview of a weather file that was last written. */
  readonly weatherTaken: { readonly preview: string; readonly days: number } | null;
  /** Grows whenever something is kept that the season is told from. */
  readonly seasonRevision: number;
  /** Grows whenever something is kept of an animal. */
  readonly herdRevision: number;
  /** The newest scores by animal, oldest first. */
  readonly scores: ReadonlyMap<string, readonly AnimalScores[]>;
  readonly jugs: readonly Jug[];
  /** The lots of packets and bottles that ever came in. */
  readonly stock: readonly StockLot[];
  /** The farm's empty jugs, those weighed anew or given up too. */
  readonly vessels: readonly Vessel[];
  /** The newest rows of the day book, newest first; all others are read from the disk where they are needed. */
  readonly recent: readonly NumberedEntry[];
  /** Earlier doses of the animals on the farm, as far as a caution can tell them apart. */
  readonly earlier: readonly EarlierDose[];
  /** By animal, the treatments that decide what is kept back of it, however old; oldest first. */
  readonly keepingBack: ReadonlyMap<string, readonly DayBookEntry[]>;
  /** Egg counts with their corrections, in the order they were logged. */
  readonly eggCounts: readonly EggEntry[];
  /** Reduction tests in the order they were planned. */
  readonly reductionTests: readonly ReductionTest[];
  /** Grows with every egg count and test. */
  readonly wormRevision: number;
  /** What the kiosk ships with, and what the farm added. */
  readonly formulary: Formulary;
  /** Ids of the presentations and rules the farm added. */
  readonly ownIds: ReadonlySet<string>;
  /** Ids of those of them that are used no more: found for what was made with them, offered for nothing new. */
  readonly retiredIds: ReadonlySet<string>;
  /** What of the farm's own medicines was left out, a sentence each. */
  readonly formularyTrouble: readonly string[];
  readonly approvals: readonly Approval[];
  /** The veterinarians named in approvals, the latest first. */
  readonly vets: readonly string[];
  readonly settings: Settings;
  /** Thresholds of whom to treat that the farm set itself. */
  readonly wormRules: readonly OwnThreshold[];
  /** What came from other kiosks and is on the disk only, since more was to come, and the uptime it is so since; `null` where nothing is. */
  readonly unread: { readonly touched: Touched; readonly sinceMs: number } | null;
  /** A tag that belongs to no animal, and the uptime it was read at. */
  readonly unknownTag: { readonly tag: string; readonly at: number } | null;
}

/** How many rows of the day book are held in memory: those the state carries. */
export const RECENT_KEPT = 60;

/** How many scores of each animal are held in memory; more than a look a day while any of them counts. */
const SCORES_KEPT = 20;

/** The newest scores of an animal that stand, oldest first. */
export function newestScores({ scores }: Pick<Store, 'scores'>, animalId: string): AnimalScores[] {
  return scores.newest(animalId, SCORES_KEPT).reverse();
}

/** The settings of a kiosk where nobody has set any. */
export function defaultSettings(config: {
  face: Settings['face'];
  language: Settings['language'];
  weightUnit: Settings['weightUnit'];
  people: string[];
}): Settings {
  return {
    face: config.face,
    language: config.language,
    weightUnit: config.weightUnit,
    person: config.people[0] ?? 'Keeper',
    syringeIds: [],
    safetyRead: false,
    firstStart: null,
    scaleCheckDays: USUAL_CHECK_DAYS,
    scaleCheckStops: false,
    wormSeason: 'high',
    eggsPerGram: null,
    offFeedSinceMs: null,
    currency: 'USD',
    latitude: null,
    voice: { language: config.language, voice: 'en-us', rate: 155, volume: 80, muted: false },
    ear: USUAL_EAR,
    paper: 'a6',
  };
}

/** What the disk says, with both workflows at their beginning. */
export function loadMemory(
  store: Store,
  defaults: Settings,
  ownMedicines: OwnMedicines = NOTHING_OWN,
): Memory {
  return {
    ...herdOnDisk(store),
    deck: BLANK_DECK,
    bench: BLANK_BENCH,
    round: FRESH_ROUND,
    mixing: IDLE_MIXING,
    check: NO_CHECK,
    deadWeight: BLANK_BENCH,
    syringeCheck: NO_SYRINGE_CHECK,
    scaleChecks: {
      platform: store.scaleChecks.latest('platform'),
      bench: store.scaleChecks.latest('bench'),
    },
    syringeChecks: store.syringeChecks.latest(),
    takenIn: null,
    weatherTaken: null,
    seasonRevision: 0,
    herdRevision: 0,
    jugs: store.jugs.atHand(),
    stock: tally(store.stock.lots(), store.stock.events()),
    vessels: store.vessels.all(),
    ...formularyOf(ownMedicines),
    wormRevision: 0,
    approvals: store.approvals.inForce(),
    vets: store.approvals.vets(),
    settings: store.settings.read(defaults),
    wormRules: store.wormRules.inForce(),
    unread: null,
    unknownTag: null,
  };
}

/** The parts of memory that say which animals there are and what is written of them. */
export function herdOnDisk(store: Store) {
  const herd = store.animals.all();
  const present = herd.filter(isPresent);
  return {
    animals: present.map((animal) => ({ ...animal, lastWeight: lastWeightOf(animal, store) })),
    gone: herd.filter((animal) => !isPresent(animal)),
    scores: new Map(present.map(({ id }) => [id, newestScores(store, id)])),
    recent: store.dayBook.newest(RECENT_KEPT),
    earlier: present.flatMap(({ id }) => store.dayBook.earlierDoses(id)),
    keepingBack: new Map(present.map(({ id }) => [id, store.dayBook.keepingBack(id)])),
    eggCounts: store.eggCounts.entries(),
    reductionTests: store.reductionTests.all(),
  };
}

/** The parts of memory that follow from the file of the farm's own medicines. */
export function formularyOf({ formulary, own, retired, trouble }: OwnMedicines) {
  return { formulary, ownIds: own, retiredIds: retired, formularyTrouble: trouble };
}

/** Memory after a treatment was written or corrected: what follows from it is read anew, and nothing else. */
export function withEntry(memory: Memory, store: Store, entry: NumberedEntry): Memory {
  const { dayBook } = store;
  const { jug } = entry.treatment.offer;
  const touched = animalsNamed(entry);
  const keepingBack = new Map(memory.keepingBack);
  for (const id of touched) keepingBack.set(id, dayBook.keepingBack(id));
  const others = memory.earlier.filter(({ animalId }) => !touched.includes(animalId));
  const { volumeMl, doubtMl, draws } = dayBook.drawn(jug.id);
  const drawn = { drawn: millilitres(volumeMl), drawnDoubt: millilitres(doubtMl), draws };
  return {
    ...memory,
    recent: recentWith(memory.recent, entry),
    earlier: [...others, ...touched.flatMap((id) => dayBook.earlierDoses(id))],
    keepingBack,
    animals: memory.animals.map((animal) =>
      touched.includes(animal.id) ? { ...animal, lastWeight: lastWeightOf(animal, store) } : animal,
    ),
    jugs: memory.jugs.map((each) => (each.id === jug.id ? { ...each, ...drawn } : each)),
  };
}

/** Memory after records of other kiosks were taken in: what they touched is read anew, and nothing else. */
export function withReceived(memory: Memory, store: Store, touched: Touched): Memory {
  const { dayBook } = store;
  const revised = {
    ...memory,
    herdRevision: memory.herdRevision + 1,
    wormRevision: memory.wormRevision + (touched.worms || touched.clock ? 1 : 0),
  };
  if (touched.merges || touched.clock)
    return { ...revised, ...herdOnDisk(store), jugs: touched.clock ? store.jugs.atHand() : memory.jugs };
  const read = [...touched.animals].flatMap((id) => store.animals.find(id) ?? []);
  const present = read.filter(isPresent);
  const untouched = ({ id }: HerdAnimal) => !touched.animals.has(id);
  const weighed = present.map((animal) => ({ ...animal, lastWeight: lastWeightOf(animal, store) }));
  const scores = new Map(memory.scores);
  const keepingBack = new Map(memory.keepingBack);
  for (const { id } of present) {
    scores.set(id, newestScores(store, id));
    keepingBack.set(id, dayBook.keepingBack(id));
  }
  return {
    ...revised,
    animals: [...memory.animals.filter(untouched), ...weighed].sort((a, b) => a.name.localeCompare(b.name)),
    gone: [...memory.gone.filter(untouched), ...read.filter((animal) => !isPresent(animal))],
    scores,
    keepingBack,
    earlier: [
      ...memory.earlier.filter(({ animalId }) => !touched.animals.has(animalId)),
      ...present.flatMap(({ id }) => dayBook.earlierDoses(id)),
    ],
    recent: touched.treatments.size > 0 ? dayBook.newest(RECENT_KEPT) : memory.recent,
    ...(touched.worms
      ? { eggCounts: store.eggCounts.entries(), reductionTests: store.reductionTests.all() }
      : {}),
  };
}

/** The newest rows with one that was written or corrected: before all others, or in the place it has. */
function recentWith(recent: readonly NumberedEntry[], entry: NumberedEntry): readonly NumberedEntry[] {
  if (entry.sequence > (recent[0]?.sequence ?? 0)) return [entry, ...recent].slice(0, RECENT_KEPT);
  return recent.map((each) => (each.sequence === entry.sequence ? entry : each));
}

/** The syringes on hand, each with what its last check found. */
export function syringesOnHand({ settings, syringeChecks }: Memory): Syringe[] {
  return SYRINGE_CATALOGUE.filter((syringe) => settings.syringeIds.includes(syringe.id)).map((syringe) => {
    const found = syringeChecks.find(({ syringeId }) => syringeId === syringe.id)?.findings;
    if (found === undefined) return syringe;
    const { mark, bias, biasUncertainty, spread } = found;
    return { ...syringe, measured: { mark, bias, biasUncertainty, spread } };
  });
}

/** How the checks of a scale stand by the farm's rule. */
export function checkingOf({ scaleChecks, settings }: Memory, role: ScaleRole): ScaleChecking {
  return {
    last: scaleChecks[role],
    everyDays: settings.scaleCheckDays,
    stops: settings.scaleCheckStops,
  };
}
