import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bearerOf, invite } from '../../../server/hub/credentials.ts';
import { residentMb } from '../of-process.ts';
import type { Figure } from '../table.ts';
import { rowOf } from './copy-in.ts';
import { besideHub, type RunningHub } from './machines.ts';
import { type Teller, toldEvent } from './told.ts';

/** Kiosks that push at once, each of a farm of its own, and what each has to push. */
const KIOSKS = 8;
const EVENTS_EACH = 12_500;
/** As many as a kiosk pushes at once. */
const A_BATCH = 200;
const COPIES = 3;
const GOAL = 5000;

interface Load {
  readonly headers: Readonly<Record<string, string>>;
  readonly bodies: readonly string[];
}

/**
 * How many events a second the hub takes of kiosks that have much to tell, against a bare COPY of the same rows into a table
 * without keys, in the same run. Hub, database and those who push share the cores of this machine.
 */
export async function pushFigures(hub: RunningHub): Promise<Figure[]> {
  const database = await besideHub(hub);
  const loads: Load[] = [];
  const rows: string[] = [];
  for (let n = 0; n < KIOSKS; n += 1) {
    const farm = `pushing-${n}`;
    const invitation = await invite(database, farm, 'North shed', { hub: hub.address, ca: null });
    const teller = { kiosk: `kiosk-${n}`, life: `pushing-life-${n}` };
    const headers = { 'content-type': 'application/json', authorization: bearerOf(invitation) };
    loads.push({ headers, bodies: batchesOf(teller) });
    rows.push(...rowsOf(farm, invitation.credential, teller));
  }
  await database.close();
  const began = performance.now();
  await Promise.all(loads.map((load) => pushAll(hub.address, load)));
  const seconds = (performance.now() - began) / 1000;
  const copySeconds = copied(hub.database, rows);
  const events = KIOSKS * EVENTS_EACH;
  const [pushed, copy] = [events / seconds, events / copySeconds];
  const megabytes = rows.reduce((sum, row) => sum + row.length, 0) / 2 ** 20;
  const past = pushed < GOAL ? `, short of the goal of ${GOAL}` : '';
  return [
    {
      what: 'events a second taken by the hub',
      ratio: pushed / copy,
      against: 'a bare COPY of the same rows',
      raw: `${pushed.toFixed(0)}/s of ${KIOSKS} kiosks at once, ${A_BATCH} a push, COPY ${copy.toFixed(0)}/s; ${events} events, ${megabytes.toFixed(0)} MB; hub ${residentMb(hub.pid).toFixed(0)} MB resident${past}`,
    },
  ];
}

function batchesOf(teller: Teller): string[] {
  const bodies: string[] = [];
  for (let from = 1; from <= EVENTS_EACH; from += A_BATCH) {
    const many = Math.min(A_BATCH, EVENTS_EACH - from + 1);
    const events = Array.from({ length: many }, (_, i) => toldEvent(teller, from + i));
    const told = events.map(({ sequence, id, clock, kind, body }) => ({ sequence, id, clock, kind, body }));
    const before = from === 1 ? null : toldEvent(teller, from - 1).id;
    bodies.push(JSON.stringify({ kiosk: teller.kiosk, life: teller.life, before, events: told }));
  }
  return bodies;
}

/** Pushes one batch after the other, as a kiosk does. */
async function pushAll(address: string, { headers, bodies }: Load): Promise<void> {
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  for (const body of bodies) {
    const answer = await post(`${address}/v1/push`, { agent, headers, body });
    if (!answer.includes('"ok":true')) throw new Error(`the hub refused a batch: ${answer}`);
  }
  agent.destroy();
}

function post(
  url: string,
  { agent, headers, body }: { agent: Agent; headers: Load['headers']; body: string },
): Promise<string> {
  return new Promise((resolve, reject) => {
    const asked = request(url, { method: 'POST', agent, headers }, (response) => {
      let text = '';
      response.on('data', (part) => {
        text += String(part);
      });
      response.on('end', () => resolve(text));
    });
    asked.on('error', reject);
    asked.end(body);
  });
}

function rowsOf(farm: string, credential: string, teller: Teller): string[] {
  return Array.from({ length: EVENTS_EACH }, (_, place) =>
    rowOf(farm, credential, toldEvent(teller, place + 1)),
  );
}

/** Seconds a COPY of rows takes into a table of the same columns and no keys, the middle of a few. */
function copied(database: string, rows: readonly string[]): number {
  const folder = mkdtempSync(join(tmpdir(), 'bench-copy-'));
  try {
    const file = join(folder, 'rows');
    writeFileSync(file, rows.join(''));
    psql(database, 'CREATE TABLE bare (LIKE events)');
    const took = Array.from({ length: COPIES }, () => {
      psql(database, 'TRUNCATE bare');
      const from = performance.now();
      psql(database, `\\copy bare FROM '${file}'`);
      return (performance.now() - from) / 1000;
    });
    psql(database, 'DROP TABLE bare');
    return took.sort((a, b) => a - b)[Math.floor(COPIES / 2)] ?? Number.NaN;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function psql(database: string, command: string): void {
  const done = spawnSync('psql', ['-q', '-d', database, '-c', command], { encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`psql: ${done.stderr || done.error}`);
}
