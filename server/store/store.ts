import { createAnimalStore } from './animals.ts';
import { createApartStore } from './apart.ts';
import { createApprovalStore } from './approvals.ts';
import { type ClockCorrections, createClockCorrections } from './clock-corrections.ts';
import { createDayBook } from './day-book.ts';
import { createEggCountStore } from './egg-counts.ts';
import { createEventStore } from './events.ts';
import { createHandledStore } from './handled.ts';
import { createHubKioskStore } from './hub-kiosks.ts';
import { createJugStore } from './jugs.ts';
import { createNoteStore } from './notes.ts';
import { closeUntouched, type Db, openStore } from './open-store.ts';
import { createReceiver } from './receive.ts';
import { createReductionTestStore } from './reduction-tests.ts';
import { createScaleCheckStore } from './scale-checks.ts';
import { createScoreStore } from './scores.ts';
import { createSettingsStore } from './settings.ts';
import { createStockStore } from './stock.ts';
import { createSyringeCheckStore } from './syringe-checks.ts';
import { createUpkeepStore } from './upkeep.ts';
import { createVesselStore } from './vessels.ts';
import { createWeatherStore } from './weather.ts';
import { createWeighingStore } from './weighings.ts';
import { createWeightWordStore } from './weight-words.ts';
import { createWormRuleStore } from './worm-rules.ts';

/** Everything kept on disk. */
export interface Store {
  readonly animals: ReturnType<typeof createAnimalStore>;
  readonly weighings: ReturnType<typeof createWeighingStore>;
  readonly scores: ReturnType<typeof createScoreStore>;
  readonly notes: ReturnType<typeof createNoteStore>;
  readonly weightWords: ReturnType<typeof createWeightWordStore>;
  readonly wormRules: ReturnType<typeof createWormRuleStore>;
  readonly eggCounts: ReturnType<typeof createEggCountStore>;
  readonly reductionTests: ReturnType<typeof createReductionTestStore>;
  readonly jugs: ReturnType<typeof createJugStore>;
  readonly stock: ReturnType<typeof createStockStore>;
  readonly vessels: ReturnType<typeof createVesselStore>;
  readonly dayBook: ReturnType<typeof createDayBook>;
  readonly clockCorrections: Pick<ClockCorrections, 'ofStart'>;
  readonly approvals: ReturnType<typeof createApprovalStore>;
  readonly weather: ReturnType<typeof createWeatherStore>;
  readonly settings: ReturnType<typeof createSettingsStore>;
  readonly scaleChecks: ReturnType<typeof createScaleCheckStore>;
  readonly syringeChecks: ReturnType<typeof createSyringeCheckStore>;
  readonly upkeep: ReturnType<typeof createUpkeepStore>;
  readonly events: ReturnType<typeof createEventStore>;
  readonly apart: ReturnType<typeof createApartStore>;
  readonly hubKiosks: ReturnType<typeof createHubKioskStore>;
  readonly received: ReturnType<typeof createReceiver>;
  readonly handled: ReturnType<typeof createHandledStore>;
  /** Runs a change all or nothing; what it wrote is on the disk when this returns. */
  whole<T>(change: () => T): T;
  /** Moves what was written from the log beside the file into the file. */
  checkpoint(): void;
  close(): void;
  /** Closes without moving the log into the file, so that both stay as they were found. */
  closeUntouched(): void;
}

/** Opens the database file at a path, or `:memory:`. */
export function createStore(path: string): Store {
  const db: Db = openStore(path);
  const weighings = createWeighingStore(db);
  const clockCorrections = createClockCorrections(db);
  const dayBook = createDayBook(db, clockCorrections);
  return {
    animals: createAnimalStore(db, weighings),
    weighings,
    scores: createScoreStore(db),
    notes: createNoteStore(db),
    weightWords: createWeightWordStore(db),
    wormRules: createWormRuleStore(db),
    eggCounts: createEggCountStore(db),
    reductionTests: createReductionTestStore(db),
    jugs: createJugStore(db, dayBook, clockCorrections),
    stock: createStockStore(db),
    vessels: createVesselStore(db),
    dayBook,
    clockCorrections,
    approvals: createApprovalStore(db),
    weather: createWeatherStore(db),
    settings: createSettingsStore(db),
    scaleChecks: createScaleCheckStore(db),
    syringeChecks: createSyringeCheckStore(db),
    upkeep: createUpkeepStore(db),
    events: createEventStore(db),
    apart: createApartStore(db),
    hubKiosks: createHubKioskStore(db),
    received: createReceiver(db, dayBook),
    handled: createHandledStore(db),
    whole: (change) => db.transaction(change).immediate(),
    checkpoint: () => void db.pragma('wal_checkpoint(TRUNCATE)'),
    close: () => db.close(),
    closeUntouched: () => closeUntouched(db),
  };
}
