import { clockText, hear, readClock } from '../../core/hub/clock.ts';
import { EVENT_KINDS, type Event, type EventKind } from '../../core/hub/event.ts';
import { type HeldOf, judgePush, type PushRefusal } from '../../core/hub/push.ts';
import { errorCode } from '../error-code.ts';
import type { createDayBook } from './day-book.ts';
import type { Db } from './open-store.ts';
import { NotYet } from './receive-animals.ts';
import { createRecordReceiver, type Touched } from './receive-records.ts';
import { TOLD_BODIES } from './told-bodies.ts';

/** Events that were refused as a whole: nothing of them was kept. */
export class NotReceived extends Error {
  readonly why: PushRefusal;
  /** The life they are of. */
  readonly life: string;
  constructor(why: PushRefusal, life: string) {
    super(`events of life ${life} were not taken in: ${why}`);
    this.why = why;
    this.life = life;
  }
}

/** The time at this kiosk when events come. */
export interface Here {
  /** Milliseconds since 1970. */
  readonly wallMs: number;
  readonly clockTrusted: boolean;
}

/** One life of a kiosk as far as it is held here. */
export interface HeldLife {
  readonly life: string;
  readonly kiosk: string;
  readonly head: number;
}

type Row = Omit<Event, 'kiosk' | 'body'> & { readonly body: string };

/** Why an event is passed over: another kiosk found it without a place and told it too. */
const TOLD_BEFORE = 'told before';

/** Takes in what other kiosks told, each event once and in the order of its life. */
export function createReceiver(db: Db, dayBook: ReturnType<typeof createDayBook>) {
  const records = createRecordReceiver(db, dayBook);
  const lifeNumber = db.prepare<[string], number>('SELECT number FROM kiosk_lives WHERE life = ?').pluck();
  const addLife = db.prepare('INSERT INTO kiosk_lives (kiosk, life) VALUES (?, ?)');
  const head = `max(
    coalesce((SELECT max(sequence) FROM events WHERE events.life = kiosk_lives.number), 0),
    coalesce((SELECT max(sequence) FROM events_waiting WHERE events_waiting.life = kiosk_lives.number), 0))`;
  const held = db.prepare<[], HeldLife>(`SELECT kiosk, life, ${head} AS head FROM kiosk_lives`);
  const headOf = db.prepare<[string], number>(`SELECT ${head} FROM kiosk_lives WHERE life = ?`).pluck();
  const idAt = db
    .prepare<[object], string>(
      `SELECT id FROM events WHERE life = (SELECT number FROM kiosk_lives WHERE life = @life) AND sequence = @sequence
       UNION ALL
       SELECT id FROM events_waiting WHERE life = (SELECT number FROM kiosk_lives WHERE life = @life) AND sequence = @sequence`,
    )
    .pluck();
  const kioskOf = db
    .prepare<[string, unknown], string>(
      'SELECT kiosk FROM events JOIN kiosk_lives ON kiosk_lives.number = events.life WHERE kind = ? AND record = ?',
    )
    .pluck();
  const known = db.prepare('SELECT 1 FROM events WHERE kind = ? AND record = ?');
  const addEvent = db.prepare(
    `INSERT INTO events (life, sequence, id, clock, kind, record, animal, body)
     VALUES (?, @sequence, @id, @clock, @kind, @record, @animal, @body)`,
  );
  const addWaiting = db.prepare(
    'INSERT INTO events_waiting (life, sequence, id, clock, kind, body, why) VALUES (?, ?, ?, ?, ?, ?, ?)',
  );
  const waiting = db.prepare<[], Row & { number: number }>(
    `SELECT number, kiosk_lives.life, sequence, id, clock, kind, body
     FROM events_waiting JOIN kiosk_lives ON number = events_waiting.life ORDER BY clock, id`,
  );
  const noLonger = db.prepare('DELETE FROM events_waiting WHERE id = ?');
  const countWaiting = db
    .prepare<[string], number>('SELECT count(*) FROM events_waiting WHERE why <> ?')
    .pluck();
  const toldBefore = db.prepare('SELECT 1 FROM events WHERE id = ?');
  const clock = db.prepare<[], string>('SELECT clock FROM kiosk_self').pluck();
  const setClock = db.prepare('UPDATE kiosk_self SET clock = ?');
  const silence = db.prepare('INSERT INTO receiving VALUES (1)');
  const speak = db.prepare('DELETE FROM receiving');

  function numberOf(life: string, kiosk: string): number {
    return lifeNumber.get(life) ?? Number(addLife.run(kiosk, life).lastInsertRowid);
  }

  const heldOf = (life: string): HeldOf => ({
    head: headOf.get(life) ?? 0,
    idAt: (sequence) => idAt.get({ life, sequence }),
  });

  /** Takes one event in, or answers why it must wait. */
  const apply = db.transaction((life: number, event: Row, now: Here, touched: Touched): void => {
    const kind = EVENT_KINDS.find((each) => each === event.kind);
    if (kind === undefined) throw new NotUnderstood(`there is no kind ${event.kind}`);
    const body = bodyOf(kind, event.body);
    const written = records.write(
      { kind, body } as Parameters<typeof records.write>[0],
      { nowMs: now.clockTrusted ? now.wallMs : null },
      touched,
    );
    // One record told of by two kiosks, such as a weight read in from one file at both.
    const record = known.get(kind, written.record) === undefined ? written.record : event.id;
    addEvent.run(life, {
      ...event,
      record,
      animal: written.animal,
      body: kind === 'treatment' || kind === 'egg-count' || kind === 'reduction-test' ? null : event.body,
    });
    written.afterwards?.();
  });

  function tryOne(life: number, event: Row, now: Here, touched: Touched): string | null {
    if (toldBefore.get(event.id) !== undefined) return TOLD_BEFORE;
    try {
      apply(life, event, now, touched);
      return null;
    } catch (error) {
      if (error instanceof NotUnderstood) return error.message;
      // What it names has not come yet, or the rules of the tables say that it contradicts what is here.
      if (error instanceof NotYet) return error.message;
      if (errorCode(error).startsWith('SQLITE_CONSTRAINT')) return String(error);
      throw error;
    }
  }

  function tryWaiting(now: Here, touched: Touched): void {
    for (let went = true; went; ) {
      went = false;
      for (const { number, ...event } of waiting.all()) {
        // Out of the way first: its id stands in one of the two tables only.
        const why = tryOne(number, event, now, touched);
        if (why !== null) continue;
        noLonger.run(event.id);
        went = true;
      }
    }
  }

  return {
    /** The lives of all kiosks that are known here, with the number of the last event held of each. */
    held: (): HeldLife[] => held.all(),
    /** The id of an event; `undefined` where it is not held. */
    idAt: (life: string, sequence: number): string | undefined => idAt.get({ life, sequence }),
    /** The kiosk that wrote a record of this file, by its name among its kind; `null` where no event tells of it. */
    kioskOf: (kind: EventKind, record: unknown): string | null => kioskOf.get(kind, record) ?? null,
    /** How many events came and could not be taken in yet. */
    waiting: (): number => countWaiting.get(TOLD_BEFORE) ?? 0,
    /**
     * Takes in events of one life that follow each other. Belongs in a transaction, which is taken back where this throws:
     * `NotReceived` where they do not follow what is held, an error of SQLite where the disk refuses.
     */
    take(events: readonly Event[], now: Here, touched: Touched): void {
      const [first] = events;
      if (first === undefined) return;
      const { life, kiosk } = first;
      const before = first.sequence === 1 ? null : (idAt.get({ life, sequence: first.sequence - 1 }) ?? '');
      const verdict = judgePush(heldOf(life), { before, events });
      if (!verdict.ok) throw new NotReceived(verdict.why, life);
      const number = numberOf(life, kiosk);
      silence.run();
      let newest = readClock(clock.get() ?? '');
      let took = false;
      for (const { body, ...event } of events.slice(verdict.newFrom)) {
        newest = hear(newest, readClock(event.clock), now.wallMs);
        const row = { ...event, body: JSON.stringify(body) };
        const why = tryOne(number, row, now, touched);
        if (why === null) took = true;
        else addWaiting.run(number, event.sequence, event.id, event.clock, event.kind, row.body, why);
      }
      if (took) tryWaiting(now, touched);
      setClock.run(clockText(newest));
      speak.run();
    },
  };
}

/** An event of a form this program does not know: it waits until the program is updated. */
class NotUnderstood extends Error {}

function bodyOf(kind: EventKind, text: string): unknown {
  const parsed = TOLD_BODIES[kind].safeParse(JSON.parse(text));
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    throw new NotUnderstood(`${kind}: ${issue?.path.join('.')} ${issue?.message}`);
  }
  return parsed.data;
}
