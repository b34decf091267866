import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { between, type Random, seededRandom } from '../../hardware/simulator/random.ts';
import type { Db } from '../../server/store/open-store.ts';
import { Database } from '../../server/store/sqlite.ts';
import { type HubProcess, inviteInto, startHub } from '../process/hub-process.ts';
import type { KioskProcess } from '../process/kiosk-process.ts';
import { startPostgres } from '../server/make/postgres.ts';
import { databaseOf, farmFolder, kill, startOn } from './farm.ts';
import { type Ledger, post, send } from './ledger.ts';
import { begin, give, type Kid, learnKids, NOTED } from './round.ts';

/** What many schedules of crashes came to. */
export interface SharedHerdReport {
  readonly schedules: number;
  readonly crashes: Readonly<Record<Crash, number>>;
  /** Intents that were acknowledged, and those in flight at a crash. */
  readonly acknowledged: number;
  readonly inFlight: number;
  /** Events that kiosks and hub hold in the end. */
  readonly events: number;
  /** What does not add up: schedules after which they did not come to hold the same, and records lost or doubled. */
  readonly wrong: readonly string[];
}

/**
 * How something is made to crash: a kiosk or the hub by SIGKILL, the hub's connections by the server, the server by an
 * immediate shutdown.
 */
type Crash = 'kiosk' | 'hub' | 'connections' | 'postgres';

const CRASHES: readonly Crash[] = ['kiosk', 'hub', 'connections', 'postgres'];
/** Crashes of one schedule, each after so many milliseconds of work. */
const STEPS = 4;
const WORK = { least: 20, most: 400 } as const;
/** How long all may take to hold the same once everything runs, from the last event that reached anybody. */
const SETTLE_MS = 30_000;

interface Shed {
  readonly folder: string;
  readonly ledger: Ledger;
  kiosk: KioskProcess;
  jugId: string;
}

/**
 * Two built kiosks, the built hub and a PostgreSQL that waits for the disk, all of them processes, at work while one after
 * the other is killed and started again. After each schedule they must come to hold the same events, and as many records as
 * were acknowledged, each once.
 */
export async function crashSharedHerd(
  schedules: number,
  seed: number,
  told: (done: number) => void = () => {},
): Promise<SharedHerdReport> {
  const random = seededRandom(seed);
  const postgres = await startPostgres(true);
  const url = await postgres.database();
  const env = { BYRESIDE_HUB_DATABASE: url, BYRESIDE_HUB_PORT: '4188' };
  const crashes: Record<Crash, number> = { kiosk: 0, hub: 0, connections: 0, postgres: 0 };
  const wrong: string[] = [];
  let inFlight = 0;
  let hub: HubProcess | null = null;
  const sheds: Shed[] = [];
  try {
    hub = await startHub(env);
    sheds.push(await openShed(farmFolder(), 'North shed', env));
    const kids = await learnKids(sheds[0]?.kiosk.base ?? '', new Map(), sheds[0]?.jugId ?? '');
    sheds.push(await openShed(mkdtempSync(join(tmpdir(), 'south-')), 'South shed', env));
    const before = sheds.map(({ folder }) => recordsIn(folder));
    for (let n = 1; n <= schedules; n += 1) {
      for (let step = 0; step < STEPS; step += 1) {
        const crash = CRASHES[Math.floor(random() * CRASHES.length)] ?? 'kiosk';
        const struck = sheds[Math.floor(random() * sheds.length)] as Shed;
        let over = false;
        const working = sheds.map((shed) => work(shed, kids, random, () => over));
        await pause(between(random, WORK.least, WORK.most));
        crashes[crash] += 1;
        if (crash === 'kiosk') await kill(struck.kiosk);
        else if (crash === 'hub') await killHub(hub);
        else if (crash === 'postgres') await postgres.crash();
        else await cutConnections(await postgres.asSuperuser(url));
        await pause(between(random, WORK.least, WORK.most));
        over = true;
        await Promise.all(working);
        if (crash === 'kiosk') struck.kiosk = await startOn(struck.folder);
        else if (crash === 'hub') hub = await startHub(env);
        else if (crash === 'postgres') await postgres.startAgain();
        if (hub.child.exitCode !== null) {
          wrong.push(`schedule ${n}: the hub ended by itself when ${crash} crashed`);
          hub = await startHub(env);
        }
        inFlight += await sendAgain(struck);
      }
      wrong.push(...(await settled(sheds, postgres, url)).map((what) => `schedule ${n}: ${what}`));
      wrong.push(...miscounted(sheds, before).map((what) => `schedule ${n}: ${what}`));
      told(n);
    }
    const acknowledged = sheds.flatMap(({ ledger }) => [...ledger.values()]);
    return {
      schedules,
      crashes,
      acknowledged: acknowledged.filter(({ state }) => state === 'acknowledged').length,
      inFlight,
      events: idsIn(sheds[0]?.folder ?? '').length,
      wrong,
    };
  } finally {
    for (const { kiosk } of sheds) await kill(kiosk);
    if (hub !== null) await killHub(hub);
    await postgres.stop();
    for (const { folder } of sheds) rmSync(folder, { recursive: true, force: true });
  }
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

async function openShed(folder: string, name: string, env: Record<string, string>): Promise<Shed> {
  writeFileSync(join(folder, 'kiosk.json'), '{"people": ["Wren"]}');
  inviteInto(folder, name, env);
  const kiosk = await startOn(folder);
  await kiosk.until(({ animals }) => animals.length > 0, 'the herd');
  const ways = { direction: 'label', meatHours: null, milkHours: null };
  await kiosk.send({ type: 'approve', regimenId: 'fenbendazole-goat', ...ways });
  await kiosk.send({ type: 'set-syringes', syringeIds: ['syringe-3-by-0.1'] });
  return { folder, ledger: new Map(), kiosk, jugId: await begin(kiosk.base, new Map()) };
}

/** Doses, takes back, notes and moves animals to pens until it is over or the kiosk is gone. */
async function work(
  { kiosk: { base }, ledger, jugId }: Shed,
  kids: readonly Kid[],
  random: Random,
  over: () => boolean,
): Promise<void> {
  for (let i = 0; !over(); i += 1) {
    const kid = kids[Math.floor(random() * kids.length)] as Kid;
    const wish = random();
    let sent: { state: string };
    if (wish < 0.3) sent = await give(base, ledger, jugId, kid);
    else if (wish < 0.5) sent = await takeBack(base, ledger, kid);
    else if (wish < 0.8)
      sent = await send(base, ledger, {
        type: 'note-animal',
        animalId: kid.id,
        note: NOTED[i % NOTED.length],
      });
    else
      sent = await send(base, ledger, {
        type: 'edit-animal',
        animalId: kid.id,
        edit: { what: 'pen', pen: `pen ${Math.floor(random() * 9)}` },
      });
    if (sent.state === 'unknown') return;
  }
}

/** Takes back the newest dose of a kid that stands, whichever kiosk gave it. */
async function takeBack(base: string, ledger: Ledger, { id }: Kid): Promise<{ state: string }> {
  const treatments = await fetch(`${base}/api/treatments`)
    .then((response) => response.json() as Promise<{ id: string; animal: string; corrections: unknown[] }[]>)
    .catch(() => null);
  if (!Array.isArray(treatments)) return { state: 'unknown' };
  const standing = treatments.find(({ animal, corrections }) => animal === id && corrections.length === 0);
  if (standing === undefined) return { state: 'refused' };
  return send(base, ledger, { type: 'correct', treatmentId: standing.id, what: { kind: 'not-given' } });
}

/** Sends what was not answered again, as a page would; answers how many that were. */
async function sendAgain({ kiosk: { base }, ledger }: Shed): Promise<number> {
  const unknown = [...ledger.values()].filter(({ state }) => state === 'unknown');
  for (const sent of unknown) await post(base, sent);
  return unknown.length;
}

async function killHub({ child }: HubProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGKILL');
  await gone;
}

type Client = Awaited<ReturnType<Awaited<ReturnType<typeof startPostgres>>['asSuperuser']>>;

async function cutConnections(client: Client): Promise<void> {
  await client.query(
    "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'byreside-hub'",
  );
  await client.end();
}

/** Waits until kiosks and hub hold the same events; answers what they do not share when it is given up. */
async function settled(
  sheds: readonly Shed[],
  postgres: Awaited<ReturnType<typeof startPostgres>>,
  url: string,
): Promise<string[]> {
  const client = await postgres.asSuperuser(url);
  try {
    let end = Date.now() + SETTLE_MS;
    let before = -1;
    for (;;) {
      const { rows } = await client.query<{ id: string }>('SELECT id FROM events ORDER BY id');
      const held = [rows.map(({ id }) => id), ...sheds.map(({ folder }) => idsIn(folder))];
      const all = new Set(held.flat());
      const apart = held.filter((ids) => ids.length !== all.size);
      if (apart.length === 0) return [];
      const arrived = held.reduce((sum, { length }) => sum + length, 0);
      if (arrived !== before) end = Date.now() + SETTLE_MS;
      before = arrived;
      if (Date.now() > end)
        return [`hub and kiosks hold ${held.map(({ length }) => length).join(', ')} events of ${all.size}`];
      await pause(100);
    }
  } finally {
    await client.end();
  }
}

function reading<T>(folder: string, read: (db: Db) => T): T {
  const db = new Database(databaseOf(folder), { readonly: true });
  try {
    return read(db);
  } finally {
    db.close();
  }
}

const idsIn = (folder: string) =>
  reading(folder, (db) =>
    db.prepare<[], string>('SELECT id FROM events UNION ALL SELECT id FROM events_waiting').pluck().all(),
  );

/** The records that intents write, by the type of the intent. */
const WRITES = { 'give-group': 'treatments', correct: 'corrections', 'note-animal': 'notes' } as const;
type Counted = Readonly<Record<string, number>>;

function recordsIn(folder: string): Counted {
  return reading(folder, (db) =>
    Object.fromEntries(
      Object.values(WRITES).map((table) => [
        table,
        db.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get() ?? 0,
      ]),
    ),
  );
}

/** Kinds of record of which a kiosk holds another number than all kiosks together acknowledged. */
function miscounted(sheds: readonly Shed[], before: readonly Counted[]): string[] {
  const sent = sheds.flatMap(({ ledger }) => [...ledger.values()]);
  const found: string[] = [];
  for (const [place, { folder }] of sheds.entries()) {
    const now = recordsIn(folder);
    for (const [type, table] of Object.entries(WRITES)) {
      const due = sent.filter(({ intent, state }) => intent.type === type && state === 'acknowledged').length;
      const held = (now[table] ?? 0) - (before[place]?.[table] ?? 0);
      if (held !== due) found.push(`kiosk ${place + 1} holds ${held} ${table} for ${due} acknowledged`);
    }
  }
  const pens = sheds.map(({ folder }) =>
    reading(folder, (db) =>
      JSON.stringify(db.prepare('SELECT id, pen, name FROM animals ORDER BY id').all()),
    ),
  );
  if (new Set(pens).size > 1) found.push('the kiosks do not agree on the herd');
  return found;
}
