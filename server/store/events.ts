import { v7 as uuidv7 } from 'uuid';
import { clockText, FIRST_CLOCK, readClock, tick } from '../../core/hub/clock.ts';
import type { Event, EventKind } from '../../core/hub/event.ts';
import { OWN_KIOSK, TOLD_RECORDS, type ToldRecord } from './event-kinds.ts';
import type { Db } from './open-store.ts';

const KINDS = Object.entries(TOLD_RECORDS) as [EventKind, ToldRecord][];

/** SQL that tells of rows: of one that a trigger sees, or of those that `from` names. */
function tell(
  kind: EventKind,
  { record, body, kept, animal }: ToldRecord,
  { sequence, clock, from }: { readonly sequence: string; readonly clock: string; readonly from: string },
): string {
  return `INSERT INTO events (life, sequence, id, clock, kind, record, animal, body)
    SELECT kiosk_self.life, ${sequence}, new_event_id(), ${clock}, '${kind}', ${record}, ${animal ?? 'NULL'},
      ${kept ? body : 'NULL'}
    FROM kiosk_self${from};`;
}

/** What is told next in the life of this kiosk, at the time its clock was moved on to. */
const NEXT = {
  sequence: 'coalesce((SELECT max(sequence) FROM events WHERE events.life = kiosk_self.life), 0) + 1',
  clock: 'kiosk_self.clock',
  from: '',
};

/** What other kiosks told is told by them: a row stands in `receiving` while it is being written. */
export const WRITTEN_HERE = 'NOT EXISTS (SELECT 1 FROM receiving)';

const TICK = 'UPDATE kiosk_self SET clock = next_clock(clock);';

/**
 * Makes every record written over this connection tell of itself, in the statement that writes it.
 *
 * The triggers are of the connection and not of the file: rescue and repair write rows that were told of before. A file
 * without a life of its own begins one, and what no event tells of is told then.
 */
export function tellOfRecords(db: Db): void {
  db.function('next_clock', (clock) => clockText(tick(readClock(String(clock)), Date.now())));
  db.function('new_event_id', () => uuidv7());
  db.exec('CREATE TEMP TABLE receiving (one INTEGER)');
  for (const [kind, told] of KINDS) {
    const trigger = `CREATE TEMP TRIGGER tell_${kind.replaceAll('-', '_')} ${told.when} ON main.${told.table}
      WHEN ${WRITTEN_HERE} AND ${told.only ?? 'TRUE'}
      BEGIN ${TICK} ${tell(kind, told, NEXT)} END`;
    db.exec(trigger.replaceAll(/\br\./g, 'NEW.'));
  }
  if (db.prepare('SELECT 1 FROM kiosk_self').get() === undefined)
    db.transaction(() => beginLife(db)).immediate();
}

/** Ends the life of this kiosk: its records are put back to an earlier state. The next opening begins another. */
export function endLife(db: Db): void {
  const known = db.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'kiosk_self'").get() !== undefined;
  if (known) db.exec('DELETE FROM kiosk_self');
}

function beginLife(db: Db): void {
  const before = db.prepare<[], string | null>(`SELECT ${OWN_KIOSK}`).pluck().get();
  const { lastInsertRowid } = db
    .prepare('INSERT INTO kiosk_lives (kiosk, life) VALUES (?, ?)')
    .run(before ?? uuidv7(), uuidv7());
  const newest = db.prepare<[], string | null>('SELECT max(clock) FROM events').pluck().get();
  const own = { clock: newest ?? clockText(FIRST_CLOCK), sequence: 0 };
  db.prepare('INSERT INTO kiosk_self (one, life, clock) VALUES (1, ?, ?)').run(lastInsertRowid, own.clock);
  db.function('clock_of_one_more', { deterministic: false }, () => {
    own.clock = clockText(tick(readClock(own.clock), Date.now()));
    return own.clock;
  });
  db.function('one_more', { deterministic: false }, () => ++own.sequence);
  for (const [kind, told] of KINDS) {
    const { table, record, order = record, only = 'TRUE' } = told;
    // A statement a kind: years of weights are never in memory together. They are read in the order of their key.
    const untold = `, ${table} AS r WHERE ${only}
      AND NOT EXISTS (SELECT 1 FROM events WHERE events.kind = '${kind}' AND events.record = ${record})
      ORDER BY ${order}`;
    db.exec(tell(kind, told, { sequence: 'one_more()', clock: 'clock_of_one_more()', from: untold }));
  }
  db.prepare('UPDATE kiosk_self SET clock = ?').run(own.clock);
}

interface Row extends Omit<Event, 'body'> {
  readonly record: unknown;
  readonly body: string | null;
}

/** What this kiosk told, for those it is told to. Events are written by the records themselves. */
export function createEventStore(db: Db) {
  const self = db.prepare<[], { kiosk: string; life: string; newest: number }>(
    `SELECT kiosk, kiosk_lives.life,
       coalesce((SELECT max(sequence) FROM events WHERE events.life = kiosk_self.life), 0) AS newest
     FROM kiosk_self JOIN kiosk_lives ON number = kiosk_self.life`,
  );
  const LIFE = '(SELECT number FROM kiosk_lives WHERE life = @life)';
  const after = db.prepare<[object], Row>(
    `SELECT kiosk, kiosk_lives.life, sequence, id, clock, kind, record, body FROM (
       SELECT * FROM (SELECT life, sequence, id, clock, kind, record, body FROM events
         WHERE life = ${LIFE} AND sequence > @sequence ORDER BY sequence LIMIT @most)
       UNION ALL
       SELECT * FROM (SELECT life, sequence, id, clock, kind, NULL, body FROM events_waiting
         WHERE life = ${LIFE} AND sequence > @sequence ORDER BY sequence LIMIT @most)
     ) AS told JOIN kiosk_lives ON kiosk_lives.number = told.life ORDER BY sequence LIMIT @most`,
  );
  const newLife = db.prepare(`INSERT INTO kiosk_lives (kiosk, life) VALUES (${OWN_KIOSK}, ?)`);
  const setLife = db.prepare('UPDATE kiosk_self SET life = ?');
  const OWN = '(SELECT life FROM kiosk_self)';
  const newest = `(SELECT max(sequence) FROM (SELECT max(sequence) AS sequence FROM events WHERE life = ${OWN}
    UNION ALL SELECT max(sequence) FROM events_waiting WHERE life = ${OWN}))`;
  const moved = ['events', 'events_waiting'].map((table) => ({
    next: db.prepare<[object], { sequence: number; id: string }>(
      `SELECT sequence, id FROM ${table} WHERE life = ${LIFE} AND sequence > @sequence`,
    ),
    move: db.prepare<[string]>(
      `UPDATE ${table} SET life = ${OWN}, sequence = coalesce(${newest}, 0) + 1 WHERE id = ?`,
    ),
  }));
  const bodies = new Map<string, { get(record: unknown): string | undefined }>(
    KINDS.filter(([, { kept }]) => !kept).map(([kind, { table, body, record }]) => [
      kind,
      db.prepare<[unknown], string>(`SELECT ${body} FROM ${table} AS r WHERE ${record} = ?`).pluck(),
    ]),
  );
  return {
    /** The kiosk these records are of, the life it is in, and its newest event there (0: none). */
    self() {
      const row = self.get();
      if (row === undefined) throw new Error('these records have no life: open them with openStore');
      return row;
    },
    /** Events of a life, of this kiosk or another, after a sequence, oldest first, at most so many. */
    after(life: string, sequence: number, most: number): Event[] {
      return after.all({ life, sequence, most }).map(({ record, body, ...event }) => {
        const text = body ?? bodies.get(event.kind)?.get(record);
        if (text === undefined) throw new Error(`the ${event.kind} that event ${event.id} tells of is gone`);
        return { ...event, body: JSON.parse(text) };
      });
    },
    /**
     * Tells events of a life after a sequence anew, at the end of this kiosk's own: others hold other events under those
     * numbers, since a kiosk was put back to an earlier state without a word. Belongs in a transaction.
     */
    retell(life: string, sequence: number): void {
      if (self.get()?.life === life) setLife.run(newLife.run(uuidv7()).lastInsertRowid);
      const found = moved.flatMap(({ next, move }) =>
        next.all({ life, sequence }).map((event) => ({ ...event, move })),
      );
      for (const { id, move } of found.sort((a, b) => a.sequence - b.sequence)) move.run(id);
    },
  };
}
