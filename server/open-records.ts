import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { v7 as uuidv7 } from 'uuid';
import { FIRST_STEP } from '../core/first-start/first-start.ts';
import type { ProblemView } from '../shared/state.ts';
import { diskTroubleOf } from './barn/disk.ts';
import { defaultSettings, loadMemory, type Memory } from './barn/memory.ts';
import { DEMO_DATABASE, REAL_DATABASE, type Setup } from './config/load.ts';
import { seedDemoFarm } from './demo/demo-farm.ts';
import type { OwnMedicines } from './formulary/own-medicines.ts';
import { createStore, type Store } from './store/store.ts';

/** The records with what they say, or an empty stand-in and why they are not to be had. */
export interface OpenedRecords {
  /** The database; `null` where the stand-in is used. */
  readonly file: string | null;
  readonly store: Store;
  readonly memory: Memory;
  readonly problem: ProblemView | null;
}

/** What the records are opened for. */
export interface RecordsOptions {
  readonly setup: Setup;
  readonly dataFolder: string;
  readonly ownMedicines: OwnMedicines;
  /** Whether a farm without animals is led through a first start. */
  readonly leads?: boolean;
  readonly wallMs: number;
  readonly log: (message: string, error: unknown) => void;
}

/** What to do about a file that is damaged. */
const RESTORE =
  'Nothing more is written to it. Restore the last copy with npm run restore, or read out what can be read with npm run rescue; README.md says how.';

/** Opens the database and reads what the barn works by. Never throws: what cannot be read is left as it was found. */
export function openRecords(options: RecordsOptions): OpenedRecords {
  const { setup, dataFolder, ownMedicines, leads = false, wallMs, log } = options;
  function read(store: Store): Memory {
    const firstStart = leads && store.animals.all().length === 0 ? FIRST_STEP : null;
    return loadMemory(store, { ...defaultSettings(setup.config), firstStart }, ownMedicines);
  }
  function standIn(problem: ProblemView): OpenedRecords {
    const store = createStore(':memory:');
    return { file: null, store, memory: read(store), problem };
  }
  if (setup.kind === 'problem') return standIn(setup.problem);
  const file = join(dataFolder, setup.kind === 'demo' ? DEMO_DATABASE : REAL_DATABASE);
  let store: Store | null = null;
  try {
    mkdirSync(dataFolder, { recursive: true });
    store = createStore(file);
    if (setup.kind === 'demo') seedDemoFarm(store, Math.round(wallMs), uuidv7);
    return { file, store, memory: read(store), problem: null };
  } catch (error) {
    log('the database could not be opened', error);
    store?.closeUntouched();
    return standIn(unreadable(file, error));
  }
}

function unreadable(file: string, error: unknown): ProblemView {
  const detail = error instanceof Error ? error.message : String(error);
  if (diskTroubleOf(error) === 'damaged') return damagedProblem(file, [detail]);
  return {
    code: 'store-unreadable',
    file,
    field: null,
    detail,
    remedy:
      'Check that the card is not full or read-only, or restore a copy of the file, then start the kiosk again.',
  };
}

/** The problem of a database in which something was found damaged, a sentence each. */
export function damagedProblem(file: string, said: readonly string[]): ProblemView {
  const more = said.length > 1 ? ` (and ${said.length - 1} more)` : '';
  // The first line of SQLite names the tree, the next what is wrong there: one line is enough for a screen.
  const detail = `Damaged: ${(said[0] ?? '').split('\n')[0]}${more}`;
  return { code: 'store-damaged', file, field: null, detail, remedy: RESTORE };
}
