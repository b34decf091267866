import type { EarlierDose } from '../../core/dosing/repeats.ts';
import type { Weighing } from '../../core/growth/weighing.ts';
import { type BoardTime, DAY_MS } from '../../core/moment.ts';
import { grams } from '../../core/quantity/mass.ts';
import { earlierDoses } from '../../core/round/day-book.ts';
import type { createBookRecords } from './book-records.ts';
import { NEVER_BY_ITSELF } from './book-schema.ts';
import type { Db } from './open-store.ts';

/** What was drawn from a jug: volume, its standard uncertainty, and in how many draws. */
export interface Drawn {
  readonly volumeMl: number;
  readonly doubtMl: number;
  readonly draws: number;
}

/** Ends that lie this near in UTC may stand the other way round in the farm's zone. */
const ZONES_MS = 2 * DAY_MS;

const NUMBER = '(SELECT number FROM animals WHERE id = @animal)';

interface DoseRow {
  readonly line: number;
  readonly sequence: number;
  readonly rests: number;
  readonly medicine: string;
  readonly at_ms: number;
  readonly trusted: number;
  readonly board_start: string | null;
  readonly board_since_ms: number | null;
  readonly received: number | null;
}

interface WeightRow {
  readonly weighed_at_ms: number;
  readonly mass_g: number;
  readonly uncertainty_g: number;
}

/** What the rules need of the past, each by an index, so that ten years of it cost no more than one. */
export function createBookHistory(db: Db, records: Pick<ReturnType<typeof createBookRecords>, 'numbered'>) {
  const medicines = db
    .prepare(
      `WITH RECURSIVE each (medicine) AS (
         SELECT min(medicine) FROM book_lines WHERE dosed = ${NUMBER}
         UNION ALL
         SELECT (SELECT min(medicine) FROM book_lines WHERE dosed = ${NUMBER} AND medicine > each.medicine)
         FROM each WHERE each.medicine IS NOT NULL
       ) SELECT medicine FROM each WHERE medicine IS NOT NULL`,
    )
    .pluck();
  const last = (where: string, order: string) =>
    db.prepare(
      `SELECT line, sequence, medicine, at_ms, trusted, rests, board_start, board_since_ms, received FROM book_lines
       WHERE dosed = ${NUMBER} AND medicine = @medicine AND trusted = ${where} ORDER BY ${order} DESC LIMIT 1`,
    );
  const latest = [last('1', 'line'), last('1', 'at_ms'), last('0', 'line')];
  const longest = (what: 'meat' | 'milk') => ({
    top: db.prepare(`SELECT max(${what}_until_ms) FROM book_lines WHERE dosed = ${NUMBER}`).pluck(),
    first: db.prepare(
      `SELECT line, sequence FROM book_lines WHERE dosed = ${NUMBER} AND ${what}_until_ms = @until ORDER BY line LIMIT 1`,
    ),
    near: db.prepare(
      `SELECT line, sequence FROM book_lines WHERE dosed = ${NUMBER} AND ${what}_until_ms >= @until`,
    ),
    undated: db.prepare(
      `SELECT line, sequence FROM book_lines WHERE dosed = ${NUMBER} AND ${what}_undated = 1 ORDER BY line LIMIT 1`,
    ),
  });
  const held = [longest('meat'), longest('milk')];
  const weights = db.prepare(
    `SELECT weighed_at_ms, mass_g, uncertainty_g FROM book_lines
     WHERE stood = ${NUMBER} AND weighed_at_ms IS NOT NULL ORDER BY weighed_at_ms DESC, line DESC LIMIT @most`,
  );
  const dosedBy = db.prepare(
    `SELECT weighed_at_ms, mass_g, uncertainty_g FROM book_lines
     WHERE stood = ${NUMBER} AND weighed_at_ms IS NOT NULL AND dosed IS NOT NULL
     ORDER BY weighed_at_ms DESC, line DESC LIMIT @most`,
  );
  const newestOf = db.prepare(
    `SELECT sequence FROM book_lines WHERE stood = ${NUMBER} AND kind = 'treatment'
     ORDER BY filed_at_ms DESC, line DESC LIMIT @most`,
  );
  const drawn = db.prepare(
    `SELECT sum(volume_ml) AS volume, sum(doubt_ml) AS doubt, sum(draws) AS draws FROM book_lines
     WHERE jug = (SELECT number FROM jugs WHERE id = ?) AND dosed IS NOT NULL`,
  );
  const latestGiven = db
    .prepare(
      `SELECT filed_at_ms FROM book_lines WHERE kind = 'treatment' AND received IS NULL AND trusted = 1
       ORDER BY filed_at_ms DESC, line DESC LIMIT 1`,
    )
    .pluck();

  return {
    /**
     * The doses of an animal that the cautions can tell apart: of each medicine the last one given, the last of a trusted
     * date, the latest date, and the last of a date nobody trusts. In the order they were given.
     */
    earlierDoses(animal: string): EarlierDose[] {
      const found = new Map<number, DoseRow>();
      for (const medicine of medicines.all({ animal })) {
        for (const query of latest) {
          const row = query.get({ animal, medicine }) as DoseRow | undefined;
          if (row !== undefined) found.set(row.line, row);
        }
      }
      return [...found.values()]
        .sort((a, b) => vouches(a) - vouches(b) || a.line - b.line)
        .flatMap((row) =>
          row.rests === 1
            ? earlierDoses([records.numbered(row.sequence)]).map((dose) => ({
                ...dose,
                clockTrusted: row.trusted === 1,
              }))
            : {
                animalId: animal,
                medicineId: row.medicine,
                givenAtMs: row.at_ms,
                clockTrusted: row.trusted === 1,
                board: boardTimeOf(row),
                rest: null,
              },
        );
    },
    /** Numbers of the treatments that decide what is kept back of an animal: all others end before them or count less. */
    keptBackBy(animal: string): number[] {
      const found = new Map<number, number>();
      for (const { top, first, near, undated } of held) {
        const until = top.get({ animal }) as number | null;
        if (until === null) continue;
        const rows =
          until >= NEVER_BY_ITSELF.unknown
            ? first.all({ animal, until })
            : near.all({ animal, until: until - ZONES_MS });
        for (const row of [...rows, ...undated.all({ animal })] as { line: number; sequence: number }[])
          found.set(row.line, row.sequence);
      }
      return [...found].sort(([a], [b]) => a - b).map(([, sequence]) => sequence);
    },
    /** The newest weights an animal was dosed by, or was to be, newest first. */
    weights: (animal: string, most: number): Weighing[] => weights.all({ animal, most }).map(toWeighing),
    /** The newest weights an animal was really dosed by, newest first. */
    dosedBy: (animal: string, most: number): Weighing[] => dosedBy.all({ animal, most }).map(toWeighing),
    /** Numbers of the newest treatments of an animal, newest first. */
    newestOf(animal: string, most: number): number[] {
      return (newestOf.all({ animal, most }) as { sequence: number }[]).map(({ sequence }) => sequence);
    },
    /** What the day book says was drawn from a jug. A dose taken back as not given stays in it. */
    drawn(jugId: string): Drawn {
      const row = drawn.get(jugId) as { volume: number | null; doubt: number | null; draws: number | null };
      return { volumeMl: row.volume ?? 0, doubtMl: row.doubt ?? 0, draws: row.draws ?? 0 };
    },
    /** The latest date of a treatment given here that is believed, milliseconds since 1970; `null` while there is none. */
    latestGivenMs(): number | null {
      return (latestGiven.get() as number | undefined) ?? null;
    },
  };
}

/** A dated dose that came from another kiosk may be from before an undated one given here: it does not stand behind it. */
function vouches({ received, trusted }: DoseRow): number {
  return received === 1 && trusted === 1 ? 0 : 1;
}

function boardTimeOf({ board_start, board_since_ms }: DoseRow): BoardTime | null {
  if (board_start === null || board_since_ms === null) return null;
  return { start: board_start, sinceMs: board_since_ms };
}

function toWeighing(raw: unknown): Weighing {
  const row = raw as WeightRow;
  return {
    id: `${row.weighed_at_ms}:${row.mass_g}`,
    mass: grams(row.mass_g),
    uncertainty: grams(row.uncertainty_g),
    atMs: row.weighed_at_ms,
    method: 'scale',
    hoursOffFeed: null,
  };
}
