import { SYRINGE_CATALOGUE } from '../../core/dosing/syringe.ts';
import type { Animal } from '../../core/herd/animal.ts';
import { IDLE_MIXING } from '../../core/jug/reduce.ts';
import type { Mixing } from '../../core/jug/state.ts';
import type { Approval } from '../../core/medicine/approval.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import { type DayBookEntry, withDrawn, withLastWeights } from '../../core/round/day-book.ts';
import { FRESH_ROUND, type Round } from '../../core/round/state.ts';
import { type Bench, BLANK_BENCH } from '../../core/weighing/bench.ts';
import { BLANK_DECK, type Deck } from '../../core/weighing/deck.ts';
import type { Settings } from '../store/settings.ts';
import type { Store } from '../store/store.ts';

/** All that the server holds in memory; replaced part by part, never changed in place, so that it can be put back. */
export interface Memory {
  readonly deck: Deck;
  readonly bench: Bench;
  readonly round: Round;
  readonly mixing: Mixing;
  readonly animals: readonly Animal[];
  readonly jugs: readonly Jug[];
  readonly entries: readonly DayBookEntry[];
  readonly approvals: readonly Approval[];
  readonly settings: Settings;
  /** A tag that belongs to no animal, and the uptime it was read at. */
  readonly unknownTag: { readonly tag: string; readonly at: number } | null;
}

/** The settings of a kiosk where nobody has set any. */
export function defaultSettings(config: {
  face: Settings['face'];
  weightUnit: Settings['weightUnit'];
  people: string[];
}): Settings {
  return {
    face: config.face,
    weightUnit: config.weightUnit,
    person: config.people[0] ?? 'Keeper',
    syringeIds: [],
    safetyRead: false,
  };
}

/** What the disk says, with both workflows at their beginning. */
export function loadMemory(store: Store, defaults: Settings): Memory {
  const entries = store.dayBook.entries();
  return {
    deck: BLANK_DECK,
    bench: BLANK_BENCH,
    round: FRESH_ROUND,
    mixing: IDLE_MIXING,
    animals: withLastWeights(store.animals.all(), entries),
    jugs: withDrawn(store.jugs.all(), entries),
    entries,
    approvals: store.approvals.inForce(),
    settings: store.settings.read(defaults),
    unknownTag: null,
  };
}

/** Memory after the day book grew: weights and jug contents follow from it. */
export function withEntries(memory: Memory, entries: readonly DayBookEntry[]): Memory {
  return {
    ...memory,
    entries,
    animals: withLastWeights(memory.animals, entries),
    jugs: withDrawn(memory.jugs, entries),
  };
}

/** The syringes on hand. */
export function syringesOnHand(settings: Settings) {
  return SYRINGE_CATALOGUE.filter((syringe) => settings.syringeIds.includes(syringe.id));
}
