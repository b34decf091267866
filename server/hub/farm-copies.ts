import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { FarmRecords } from '../barn/barn-context.ts';
import { defaultSettings, loadMemory } from '../barn/memory.ts';
import { KioskConfig } from '../config/kiosk-config.ts';
import { setAsNewest } from '../set-as-newest.ts';
import { NotReceived } from '../store/receive.ts';
import { nothingTouched } from '../store/receive-records.ts';
import { createStore, type Store } from '../store/store.ts';
import { runsOf } from '../sync/take-in.ts';
import type { HubDatabase } from './database.ts';
import { pullEvents } from './herd-log.ts';

/** So many farms are held open; one more, and the one not read for longest is closed. */
const MOST_OPEN = 16;
/** So many events are taken in at once: a kiosk that asks meanwhile waits no longer than that takes. */
const AT_ONCE = 50;

interface Open {
  readonly store: Store;
  records: FarmRecords | null;
  head: number;
}

/**
 * The records of farms as a kiosk would hold them, so that an office reads them by the same code: files beside the hub, made
 * of the farm's log and caught up when somebody reads. They hold nothing the log does not, and may be deleted at any time.
 */
export class FarmCopies {
  readonly #database: HubDatabase;
  readonly #folder: string;
  readonly #wallMs: () => number;
  readonly #open = new Map<string, Open>();
  readonly #busy = new Map<string, Promise<unknown>>();

  /** `folder` is made where it is missing, to be read by its owner only; `wallMs` is the time, milliseconds since 1970. */
  constructor(database: HubDatabase, folder: string, wallMs: () => number = Date.now) {
    this.#database = database;
    this.#folder = folder;
    this.#wallMs = wallMs;
  }

  /**
   * Does something with the records of a farm as they stand at the hub, by a clock of an IANA zone; nobody else changes
   * them meanwhile. Throws where database or disk do.
   */
  read<T>(
    farm: string,
    { head, timeZone }: { readonly head: number; readonly timeZone: string },
    work: (records: FarmRecords) => T | Promise<T>,
  ): Promise<T> {
    const before = this.#busy.get(farm) ?? Promise.resolve();
    const now = before.catch(() => {}).then(async () => work(await this.#upTo(farm, head, timeZone)));
    this.#busy.set(farm, now);
    const over = () => {
      if (this.#busy.get(farm) === now) this.#busy.delete(farm);
    };
    now.then(over, over);
    return now;
  }

  close(): void {
    for (const { store } of this.#open.values()) store.close();
    this.#open.clear();
  }

  async #upTo(farm: string, head: number, timeZone: string): Promise<FarmRecords> {
    const open = this.#opened(farm);
    if (open.records === null || open.head !== head || open.records.config.timeZone !== timeZone) {
      try {
        await this.#catchUp(farm, open.store);
      } catch (error) {
        if (!(error instanceof NotReceived)) throw error;
        // The hub was put back to an earlier state, or a life was told anew: the copy is of a log that is no more.
        this.#forget(farm);
        return this.#upTo(farm, head, timeZone);
      }
      open.head = head;
      open.records = recordsOf(open.store, timeZone, this.#wallMs);
    }
    return open.records;
  }

  #opened(farm: string): Open {
    const known = this.#open.get(farm);
    if (known !== undefined) {
      setAsNewest(this.#open, farm, known);
      return known;
    }
    mkdirSync(this.#folder, { recursive: true, mode: 0o700 });
    const open: Open = { store: createStore(this.#fileOf(farm)), records: null, head: -1 };
    this.#open.set(farm, open);
    const [longest] = [...this.#open.keys()].filter((each) => each !== farm && !this.#busy.has(each));
    if (this.#open.size > MOST_OPEN && longest !== undefined) this.#closeOne(longest);
    return open;
  }

  #closeOne(farm: string): void {
    this.#open.get(farm)?.store.close();
    this.#open.delete(farm);
  }

  #forget(farm: string): void {
    this.#closeOne(farm);
    for (const ending of ['', '-wal', '-shm']) rmSync(this.#fileOf(farm) + ending, { force: true });
  }

  #fileOf(farm: string): string {
    return join(this.#folder, `${farm}.sqlite`);
  }

  async #catchUp(farm: string, store: Store): Promise<void> {
    for (;;) {
      const have = new Map(
        store.received.held().flatMap(({ life, head: sequence }) => {
          const id = store.received.idAt(life, sequence);
          return id === undefined ? [] : [[life, { sequence, id }] as const];
        }),
      );
      const { events, heads, parted } = await this.#database.asFarm(farm, (client) =>
        pullEvents(client, farm, have),
      );
      const [life] = [
        ...parted,
        ...[...have].flatMap(([each, { sequence }]) => (sequence > (heads.get(each) ?? 0) ? [each] : [])),
      ];
      if (life !== undefined) throw new NotReceived('sequence-reused', life);
      if (events.length === 0) return;
      for (let from = 0; from < events.length; from += AT_ONCE) {
        const here = { wallMs: this.#wallMs(), clockTrusted: true };
        store.whole(() => {
          for (const run of runsOf(events.slice(from, from + AT_ONCE)))
            store.received.take(run, here, nothingTouched());
        });
        await setImmediate();
      }
    }
  }
}

function recordsOf(store: Store, timeZone: string, wallMs: () => number): FarmRecords {
  const config = KioskConfig.parse({ timeZone });
  return {
    store,
    config,
    memory: loadMemory(store, defaultSettings(config)),
    clock: {
      now: () => ({ wallMs: wallMs(), uptimeMs: performance.now() }),
      isTrusted: () => true,
    },
  };
}
