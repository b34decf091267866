import type { ClockCorrection, Told } from '../../core/clock/correction.ts';
import { type ClockSaid, type ClockWords, clockWords } from '../../core/hub/clock-words.ts';
import type { Db } from './open-store.ts';
import { TOLD_BODIES, type ToldBody } from './told-bodies.ts';

type Body = ToldBody<'clock-correction'>;

/** What bears on one record, with the zone its days are counted in. */
export type ToldOfRecord = Told & { readonly ofStart: ClockCorrection | null };

/** What was told of the clock, here and at other kiosks, and what of it bears on a record. */
export function createClockCorrections(db: Db) {
  const newest = db.prepare<[], number | null>('SELECT max(sequence) FROM clock_corrections').pluck();
  const told = db.prepare<[], { clock: string; body: string }>(
    "SELECT clock, body FROM events WHERE kind = 'clock-correction'",
  );
  const insert = db.prepare(
    `INSERT INTO clock_corrections (id, board_start, board_since_ms, was_ms, is_ms, told, by, time_zone,
                                    treatments_before, jugs_before)
     VALUES (@id, @start, @sinceMs, @wasMs, @isMs, @told, @by, @timeZone,
             coalesce(@treatmentsBefore, (SELECT coalesce(max(sequence), 0) FROM treatments)),
             coalesce(@jugsBefore, (SELECT coalesce(max(number), 0) FROM jugs)))`,
  );
  let read: {
    readonly newest: number | null;
    readonly said: ClockSaid[];
    readonly words: ClockWords;
  } | null = null;

  /** Read once a correction: ten years of records ask for them one by one. A change that was rolled back is noticed. */
  function known() {
    const newestNow = newest.get() ?? null;
    if (read === null || read.newest !== newestNow) {
      const said = told.all().map(saidIn);
      read = { newest: newestNow, said, words: clockWords(said) };
    }
    return read;
  }

  function write(
    { board, ...correction }: ClockCorrection,
    before: { readonly treatmentsBefore: number | null; readonly jugsBefore: number | null },
  ): number {
    const { lastInsertRowid } = insert.run({
      ...correction,
      ...before,
      start: board.start,
      sinceMs: board.sinceMs,
    });
    read = null;
    return Number(lastInsertRowid);
  }

  return {
    /** Writes a word on the clock of this kiosk; answers its number. */
    add: (correction: ClockCorrection): number =>
      write(correction, { treatmentsBefore: null, jugsBefore: null }),
    /** Writes a word on the clock of another kiosk; answers its number. Its event is written before anything is read. */
    receive: (body: Body): number =>
      write(correctionIn(body), {
        treatmentsBefore: body.treatments_before,
        jugsBefore: body.jugs_before,
      }),
    /** The last word on a start of the board; `null` where there is none. */
    ofStart: (start: string): ClockCorrection | null => known().words.byStart.get(start) ?? null,
    /** The ids of records of other starts that any word on a start spoke against. */
    spokenAgainst: (start: string): string[] =>
      known().said.flatMap(({ word, ahead }) => (word.board.start === start ? ahead : [])),
    /** What bears on the record of an id that was written in a start of the board. */
    toldOf(id: string, start: string | null): ToldOfRecord {
      const { byStart, wasBefore } = known().words;
      return {
        ofStart: start === null ? null : (byStart.get(start) ?? null),
        wasBeforeMs: wasBefore.get(id) ?? null,
      };
    },
  };
}

/** What was told of the clock on disk. */
export type ClockCorrections = ReturnType<typeof createClockCorrections>;

function saidIn({ clock, body }: { readonly clock: string; readonly body: string }): ClockSaid {
  const said = TOLD_BODIES['clock-correction'].parse(JSON.parse(body));
  return { id: said.id, clock, after: said.after, word: correctionIn(said), ahead: said.ahead };
}

function correctionIn(body: Body): ClockCorrection {
  return {
    id: body.id,
    board: { start: body.board_start, sinceMs: body.board_since_ms },
    wasMs: body.was_ms,
    isMs: body.is_ms,
    told: body.told,
    by: body.by,
    timeZone: body.time_zone,
  };
}
