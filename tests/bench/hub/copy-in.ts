import { spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Event } from '../../../core/hub/event.ts';
import type { RunningHub } from './machines.ts';

/** A farm of a hub, and the credential its events came with. */
export interface Into {
  readonly farm: string;
  readonly credential: string;
}

/** What was copied. */
export interface Copied {
  readonly events: number;
  readonly seconds: number;
}

const ROWS_AT_ONCE = 1000;

/** Puts the events of one life into a farm that holds none, past the hub: as many as ten years have would take it an hour. */
export async function copyIn(
  hub: RunningHub,
  { farm, credential }: Into,
  events: Iterable<Event>,
): Promise<Copied> {
  const began = performance.now();
  const url = hub.postgres.superuserUrl(hub.database);
  const psql = spawn('psql', ['-q', '-d', url, '-v', 'ON_ERROR_STOP=1', '-c', `COPY events FROM STDIN`], {
    stdio: ['pipe', 'inherit', 'pipe'],
  });
  const ended = once(psql, 'exit');
  const superuser = await hub.postgres.asSuperuser(hub.database);
  let last: Event | null = null;
  let rows: string[] = [];
  for (const event of events) {
    if (last === null)
      await superuser.query('INSERT INTO lives (farm, life, kiosk) VALUES ($1, $2, $3)', [
        farm,
        event.life,
        event.kiosk,
      ]);
    last = event;
    rows.push(rowOf(farm, credential, event));
    if (rows.length < ROWS_AT_ONCE) continue;
    if (!psql.stdin.write(rows.join(''))) await once(psql.stdin, 'drain');
    rows = [];
  }
  psql.stdin.end(rows.join(''));
  const [status] = await ended;
  if (status !== 0 || last === null) throw new Error(`psql: ${psql.stderr.read() ?? status}`);
  const { life, sequence, id } = last;
  await superuser.query('UPDATE lives SET head = $3, head_id = $4 WHERE farm = $1 AND life = $2', [
    farm,
    life,
    sequence,
    id,
  ]);
  await superuser.query('UPDATE farms SET head = $2 WHERE farm = $1', [farm, sequence]);
  await superuser.query('ANALYZE events');
  await superuser.end();
  return { events: sequence, seconds: (performance.now() - began) / 1000 };
}

/** A row of `events` as COPY reads it; its place is its number, since the farm has one life. */
export function rowOf(
  farm: string,
  credential: string,
  { life, sequence, id, clock, kind, body }: Event,
): string {
  const text = JSON.stringify(body).replaceAll('\\', '\\\\');
  const when = '2026-11-29 08:00:00+00';
  return `${[farm, life, sequence, sequence, id, clock, kind, text, credential, when].join('\t')}\n`;
}
