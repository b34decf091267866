import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ahead, type HubLine, pullOnce, pushLacking } from '../../../core/hub/exchange.ts';
import { type Random, seededRandom } from '../../../hardware/simulator/random.ts';
import { buildHubApp } from '../../../server/hub/app.ts';
import { invite } from '../../../server/hub/credentials.ts';
import { type HubDatabase, openHubDatabase } from '../../../server/hub/database.ts';
import { FarmCopies } from '../../../server/hub/farm-copies.ts';
import { endLife } from '../../../server/store/events.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { createHolder } from '../../../server/sync/holder.ts';
import { openHubLine } from '../../../server/sync/line.ts';
import type { TestPostgres } from '../make/postgres.ts';
import { furnishShed, GOAT, type TestBarn, testBarn } from '../make/test-barn.ts';

/** What came of many schedules. */
export interface Report {
  readonly schedules: number;
  /** Events that were told by all kiosks together. */
  readonly told: number;
  /** Calls to the hub that were lost on their way, or whose answer was. */
  readonly cuts: number;
  readonly lost: readonly string[];
  readonly doubled: readonly string[];
  /** Schedules after which hub and kiosks did not hold the same. */
  readonly apart: readonly number[];
}

const KIOSKS = ['north', 'south', 'hut'];
const STEPS = 24;
const NOTES = ['lame', 'scouring', 'off-feed'] as const;

interface Shed {
  readonly name: string;
  readonly file: string;
  line: HubLine & { close(): void };
  barn: TestBarn;
}

/** Runs schedules of work, cuts, crashes and restored cards on real records, real HTTP and a real PostgreSQL. */
export async function runSchedules(postgres: TestPostgres, many: number, seed: number): Promise<Report> {
  const database = await openHubDatabase(await postgres.database());
  const copies = new FarmCopies(database, '/nowhere');
  const app = buildHubApp({ database, copies, tls: null, log: () => {} });
  const hub = await app.listen({ port: 0, host: '127.0.0.1' });
  const report = {
    schedules: many,
    told: 0,
    cuts: 0,
    lost: [] as string[],
    doubled: [] as string[],
    apart: [] as number[],
  };
  try {
    for (let n = 0; n < many; n += 1)
      await runOne({ database, hub, report, n, random: seededRandom(seed + n) });
  } finally {
    await app.close();
    await database.close();
  }
  return report;
}

interface Run {
  readonly database: HubDatabase;
  readonly hub: string;
  readonly report: { told: number; cuts: number; lost: string[]; doubled: string[]; apart: number[] };
  readonly n: number;
  readonly random: Random;
}

async function runOne({ database, hub, report, n, random }: Run): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'schedules-'));
  let cut = true;
  const fate = () => {
    const lost = cut && random() < 0.25;
    if (lost) report.cuts += 1;
    return lost;
  };
  const sheds: Shed[] = [];
  for (const [place, name] of KIOSKS.entries()) {
    const invitation = await invite(database, `farm-${n}`, name, { hub, ca: null });
    const file = join(folder, `${name}.sqlite`);
    const barn = place === 0 ? testBarn(file) : testBarn(file, furnishOther);
    const { kiosk } = barn.store.events.self();
    const line = openHubLine({ invitation, kiosk, named: () => {} });
    sheds.push({ name, file, barn, line: faulty(line, fate) });
  }
  const told = new Set<string>();
  try {
    for (let step = 0; step < STEPS; step += 1) {
      const shed = sheds[Math.floor(random() * sheds.length)] as Shed;
      const what = random();
      if (what < 0.5) work(shed, random);
      else if (what < 0.9) await meet(shed).catch(() => {});
      else crash(shed, what > 0.97);
      for (const id of ownEvents(shed.barn)) told.add(id);
    }
    cut = false;
    for (const shed of [...sheds, ...sheds, ...sheds]) await meet(shed);
    judge({ sheds, told, report, n });
  } finally {
    for (const { barn, line } of sheds) {
      line.close();
      barn.store.close();
    }
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A shed without animals: it gets its herd through the hub. */
function furnishOther(store: TestBarn['store']): void {
  furnishShed(store);
}

function faulty(line: Shed['line'], lost: () => boolean): Shed['line'] {
  async function carried<T>(call: () => Promise<T>): Promise<T> {
    if (lost()) throw new Error('the line is cut');
    const answer = await call();
    if (lost()) throw new Error('the line is cut');
    return answer;
  }
  return {
    push: (batch) => carried(() => line.push(batch)),
    pull: (have) => carried(() => line.pull(have, 0)),
    idAt: (life, sequence) => carried(() => line.idAt(life, sequence)),
    close: line.close,
  };
}

function work({ barn }: Shed, random: Random): void {
  const note = NOTES[Math.floor(random() * NOTES.length)] ?? NOTES[0];
  const pick = random();
  if (pick < 0.6) barn.send({ type: 'note-animal', animalId: GOAT.id, note });
  else if (pick < 0.9)
    barn.send({
      type: 'edit-animal',
      animalId: GOAT.id,
      edit: { what: 'pen', pen: `pen ${Math.floor(random() * 9)}` },
    });
  else
    barn.send({
      type: 'score',
      animalId: GOAT.id,
      scored: { eyelid: 3, body: null, soiling: null, jaw: null, coat: null },
    });
}

async function meet({ barn: { barn }, line }: Shed): Promise<void> {
  const kiosk = createHolder(barn);
  for (;;) {
    const { events, heads, parted } = await pullOnce(kiosk, line, 0);
    const now = await pushLacking(kiosk, line, heads);
    if (events.length + parted.length === 0 && ahead(now, kiosk.heads()).length === 0) return;
  }
}

/** The kiosk starts anew on its file; where its card was put back with a word, in another life. */
function crash(shed: Shed, anotherLife: boolean): void {
  shed.barn.store.close();
  if (anotherLife) {
    const db = openStore(shed.file);
    endLife(db);
    db.close();
  }
  shed.barn = testBarn(shed.file, () => {});
}

function ownEvents({ store }: TestBarn): string[] {
  return store.received
    .held()
    .flatMap(({ life, head }) => store.events.after(life, 0, head).map(({ id }) => id));
}

function judge({
  sheds,
  told,
  report,
  n,
}: {
  sheds: Shed[];
  told: Set<string>;
  report: Run['report'];
  n: number;
}): void {
  report.told += told.size;
  const held = sheds.map(({ barn }) => ownEvents(barn).sort());
  for (const ids of held) {
    const once = new Set(ids);
    report.lost.push(...[...told].filter((id) => !once.has(id)));
    report.doubled.push(...ids.filter((id, place) => ids[place - 1] === id));
  }
  const herd = sheds.map(({ barn }) =>
    JSON.stringify(barn.store.animals.all().sort((a, b) => (a.id < b.id ? -1 : 1))),
  );
  const notes = sheds.map(({ barn }) => barn.store.notes.newest(GOAT.id, 1000).length);
  if (new Set(herd).size > 1 || new Set(notes).size > 1) report.apart.push(n);
}
