import type { Event } from '../../core/hub/event.ts';
import type { Pulled, PushAnswer, Tip } from '../../core/hub/exchange.ts';
import { judgePush } from '../../core/hub/push.ts';
import type { FarmClient } from './database.ts';
import { MOST_EVENTS, type PushBody } from './wire.ts';

/** An answer ends with the event that brings it to so many bytes. */
const MOST_ANSWERED = 1024 * 1024;

interface LifeRow {
  readonly life: string;
  readonly kiosk: string;
  readonly head: string;
  readonly head_id: string | null;
}

/** A life of one kiosk that another claims. */
export class NotYourLife extends Error {}

/** Keeps pushed events, all or none of them, each once. `by` is the credential they came with. */
export async function pushEvents(
  client: FarmClient,
  farm: string,
  by: string,
  { kiosk, life, before, events }: PushBody,
): Promise<PushAnswer> {
  // One push a farm at a time: events get their places in the order in which they can be seen.
  const { rows: farms } = await client.query<{ head: string }>({
    name: 'lock-farm',
    text: 'SELECT head FROM farms WHERE farm = $1 FOR UPDATE',
    values: [farm],
  });
  const { rows: lives } = await client.query<LifeRow>({
    name: 'life',
    text: 'SELECT life, kiosk, head, head_id FROM lives WHERE farm = $1 AND life = $2',
    values: [farm, life],
  });
  const [known] = lives;
  if (known !== undefined && known.kiosk !== kiosk) throw new NotYourLife(`life ${life} is of another kiosk`);
  if (known === undefined)
    await client.query({
      name: 'begin-life',
      text: 'INSERT INTO lives (farm, life, kiosk) VALUES ($1, $2, $3)',
      values: [farm, life, kiosk],
    });
  const head = Number(known?.head ?? 0);
  const first = events[0]?.sequence ?? 1;
  const ids = await idsFrom(client, farm, life, first - 1, first + events.length - 1);
  const verdict = judgePush({ head, idAt: (sequence) => ids.get(sequence) }, { before, events });
  if (!verdict.ok) return { ...verdict, head };
  const fresh = events.slice(verdict.newFrom);
  const last = fresh.at(-1);
  if (last === undefined) return { ok: true, head };
  const place = Number(farms[0]?.head ?? 0);
  await client.query({
    name: 'keep-events',
    text: `INSERT INTO events (farm, life, sequence, place, id, clock, kind, body, pushed_by, pushed_at)
           SELECT $1, $2, each.sequence, each.place, each.id, each.clock, each.kind, each.body, $3, now()
           FROM unnest($4::bigint[], $5::bigint[], $6::text[], $7::text[], $8::text[], $9::text[])
             AS each (sequence, place, id, clock, kind, body)`,
    values: [
      farm,
      life,
      by,
      fresh.map(({ sequence }) => sequence),
      fresh.map((_, at) => place + at + 1),
      fresh.map(({ id }) => id),
      fresh.map(({ clock }) => clock),
      fresh.map(({ kind }) => kind),
      fresh.map(({ body }) => JSON.stringify(body)),
    ],
  });
  await client.query({
    name: 'life-goes-on',
    text: 'UPDATE lives SET head = $3, head_id = $4 WHERE farm = $1 AND life = $2',
    values: [farm, life, last.sequence, last.id],
  });
  await client.query({
    name: 'farm-goes-on',
    text: 'UPDATE farms SET head = $2 WHERE farm = $1',
    values: [farm, place + fresh.length],
  });
  return { ok: true, head: last.sequence };
}

/** A part of what a farm's log holds beyond `have`, in the order it came. */
export async function pullEvents(
  client: FarmClient,
  farm: string,
  have: ReadonlyMap<string, Tip>,
): Promise<Pulled> {
  const { rows: lives } = await client.query<LifeRow>({
    name: 'lives',
    text: 'SELECT life, kiosk, head, head_id FROM lives WHERE farm = $1 AND head > 0',
    values: [farm],
  });
  const heads = new Map(lives.map(({ life, head }) => [life, Number(head)]));
  const parted: string[] = [];
  const behind: { readonly life: string; readonly sequence: number }[] = [];
  for (const { life, head, head_id } of lives) {
    const tip = have.get(life);
    if (tip !== undefined && tip.sequence > Number(head)) continue;
    const same =
      tip === undefined || tip.id === (await idOf(client, farm, life, tip.sequence, { head, head_id }));
    if (!same) parted.push(life);
    else if ((tip?.sequence ?? 0) < Number(head)) behind.push({ life, sequence: tip?.sequence ?? 0 });
  }
  const kiosks = new Map(lives.map(({ life, kiosk }) => [life, kiosk]));
  const events = behind.length === 0 ? [] : await eventsAfter(client, farm, behind);
  return { events: events.map((each) => ({ ...each, kiosk: kiosks.get(each.life) ?? '' })), heads, parted };
}

/** The id of the event of a number; `null` where none is held. */
export async function idAt(
  client: FarmClient,
  farm: string,
  life: string,
  sequence: number,
): Promise<string | null> {
  return (await idsFrom(client, farm, life, sequence, sequence)).get(sequence) ?? null;
}

async function idOf(
  client: FarmClient,
  farm: string,
  life: string,
  sequence: number,
  { head, head_id }: Pick<LifeRow, 'head' | 'head_id'>,
): Promise<string | null> {
  return sequence === Number(head) ? head_id : idAt(client, farm, life, sequence);
}

async function idsFrom(
  client: FarmClient,
  farm: string,
  life: string,
  from: number,
  to: number,
): Promise<Map<number, string>> {
  const { rows } = await client.query<{ sequence: string; id: string }>({
    name: 'ids',
    text: 'SELECT sequence, id FROM events WHERE farm = $1 AND life = $2 AND sequence BETWEEN $3 AND $4',
    values: [farm, life, from, to],
  });
  return new Map(rows.map(({ sequence, id }) => [Number(sequence), id]));
}

/**
 * The first events after where each life is held, in the order they came, as many as are answered at once. Which they are is
 * for the database to say, so that a farm of many lives costs the hub no more memory than one.
 */
async function eventsAfter(
  client: FarmClient,
  farm: string,
  behind: readonly { readonly life: string; readonly sequence: number }[],
): Promise<Omit<Event, 'kiosk'>[]> {
  const { rows } = await client.query<{
    life: string;
    sequence: string;
    id: string;
    clock: string;
    kind: string;
    body: string;
  }>({
    name: 'events-after',
    text: `SELECT life, sequence, id, clock, kind, body FROM (
             SELECT next.*, sum(octet_length(body)) OVER (ORDER BY place) - octet_length(body) AS bytes_before
             FROM unnest($2::text[], $3::bigint[]) AS held (life, sequence)
             CROSS JOIN LATERAL (
               SELECT events.life, events.sequence, place, id, clock, kind, body FROM events
               WHERE farm = $1 AND events.life = held.life AND events.sequence > held.sequence
               ORDER BY events.sequence LIMIT $4
             ) AS next
           ) AS ordered WHERE bytes_before < $5 ORDER BY place LIMIT $4`,
    values: [
      farm,
      behind.map(({ life }) => life),
      behind.map(({ sequence }) => sequence),
      MOST_EVENTS,
      MOST_ANSWERED,
    ],
  });
  return rows.map(({ sequence, body, ...row }) => ({
    ...row,
    sequence: Number(sequence),
    body: JSON.parse(body) as unknown,
  }));
}
