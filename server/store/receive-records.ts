import type { EventKind } from '../../core/hub/event.ts';
import type { Received } from './book-lines.ts';
import { correctionFrom } from './book-records.ts';
import type { createDayBook } from './day-book.ts';
import { TOLD_RECORDS } from './event-kinds.ts';
import type { Db } from './open-store.ts';
import { createAnimalReceiver, NotYet } from './receive-animals.ts';
import type { ToldBody } from './told-bodies.ts';

/** What was touched by what came, so that no more than that is read anew. */
export interface Touched {
  readonly animals: Set<string>;
  /** Treatments that came, that a correction came of, or that are dated anew. */
  readonly treatments: Set<string>;
  /** Whether an egg count or a test came. */
  worms: boolean;
  /** Whether records were merged or parted. */
  merges: boolean;
  /** Whether something was told of a clock. */
  clock: boolean;
}

/** Nothing touched yet. */
export function nothingTouched(): Touched {
  return { animals: new Set(), treatments: new Set(), worms: false, merges: false, clock: false };
}

/** What was touched by either. */
export function touchedByBoth(one: Touched, other: Touched): Touched {
  return {
    animals: new Set([...one.animals, ...other.animals]),
    treatments: new Set([...one.treatments, ...other.treatments]),
    worms: one.worms || other.worms,
    merges: one.merges || other.merges,
    clock: one.clock || other.clock,
  };
}

type Told = { [K in EventKind]: { readonly kind: K; readonly body: ToldBody<K> } }[EventKind];

/** A record that was written: its name among its kind, and whose it is where its fields are merged. */
interface Written {
  readonly record: unknown;
  readonly animal: string | null;
  /** What follows once the event is written. */
  readonly afterwards?: () => void;
}

type Plain =
  | 'jug'
  | 'weighing'
  | 'weight-word'
  | 'score'
  | 'score-taken-back'
  | 'note'
  | 'egg-count-correction';

/** Writes the records other kiosks tell of as their own kiosk wrote them. */
export function createRecordReceiver(db: Db, dayBook: ReturnType<typeof createDayBook>) {
  const animals = createAnimalReceiver(db);
  const animalNumber = db.prepare<[string], number>('SELECT number FROM animals WHERE id = ?').pluck();
  const testNumber = db.prepare<[string], number>('SELECT number FROM reduction_tests WHERE id = ?').pluck();
  const jugNumber = db.prepare<[string], number>('SELECT number FROM jugs WHERE id = ?').pluck();
  const nextJug = db.prepare<[], number>('SELECT min(0, coalesce(min(number), 0)) - 1 FROM jugs').pluck();
  const discard = db.prepare(
    'UPDATE jugs SET discarded_at_ms = @discarded_at_ms WHERE id = @id AND discarded_at_ms IS NULL',
  );
  const inserts = new Map<string, ReturnType<Db['prepare']>>();

  function insert(table: string, row: Readonly<Record<string, unknown>>, or = ''): number {
    const names = Object.keys(row);
    const sql = `INSERT ${or} INTO ${table} (${names.join(', ')}) VALUES (${names.map((name) => `@${name}`).join(', ')})`;
    const statement = inserts.get(sql) ?? db.prepare(sql);
    inserts.set(sql, statement);
    return Number(statement.run(row).lastInsertRowid);
  }

  function numberIn(find: typeof animalNumber, id: string): number {
    const number = find.get(id);
    if (number === undefined) throw new NotYet(`${id} has not come`);
    return number;
  }

  /** A record whose columns are told as they stand. */
  function plain(
    kind: Plain,
    body: Readonly<Record<string, unknown>>,
    more: Record<string, unknown> = {},
  ): number {
    const { table, columns = [] } = TOLD_RECORDS[kind];
    const or = kind === 'weighing' ? 'OR IGNORE' : '';
    return insert(table, { ...Object.fromEntries(columns.map((name) => [name, body[name]])), ...more }, or);
  }

  function ofAnimal(
    kind: Exclude<Plain, 'jug' | 'egg-count-correction'>,
    body: Readonly<Record<string, unknown>> & { readonly animal: string },
    touched: Touched,
  ): { number: number; row: number } {
    const number = numberIn(animalNumber, body.animal);
    touched.animals.add(body.animal);
    return { number, row: plain(kind, body, { animal: number }) };
  }

  function ofOthers(body: ToldBody<'jug'>): number | undefined {
    const number = nextJug.get();
    plain('jug', body, { number });
    return number;
  }

  return {
    /** Writes one record. Throws where what it names has not come, or the tables do not take it. */
    write({ kind, body }: Told, received: Received, touched: Touched): Written {
      const as = (record: unknown, animal: string | null = null): Written => ({ record, animal });
      switch (kind) {
        case 'animal':
          touched.animals.add(body.animal);
          return as(animals.enrolled(body), body.animal);
        case 'animal-change':
          touched.animals.add(body.animal);
          return {
            ...as(animals.changed(body), body.animal),
            afterwards: () => animals.settle(body.animal),
          };
        case 'animal-merge': {
          const { kept, gone, ...row } = body;
          for (const id of [kept, gone]) touched.animals.add(id);
          touched.merges = true;
          const numbers = { kept: numberIn(animalNumber, kept), gone: numberIn(animalNumber, gone) };
          return {
            ...as(insert('animal_merges', { ...row, ...numbers })),
            afterwards: () => dayBook.refile(row.kind === 'merged' ? gone : kept),
          };
        }
        // The number is the other kiosk's: here it only has to be nobody's.
        case 'jug':
          return as(ofOthers(body));
        case 'jug-discarded': {
          const number = numberIn(jugNumber, body.id);
          discard.run(body);
          return as(number);
        }
        case 'treatment':
          touched.treatments.add(body.id);
          touched.animals.add(body.offer.animal.id);
          return as(dayBook.addTreatment(body, received));
        case 'correction': {
          touched.treatments.add(body.treatment_id);
          if (body.animal_id !== null) touched.animals.add(body.animal_id);
          const { sequence, refile } = dayBook.receiveCorrection(correctionFrom(body));
          return { ...as(sequence), afterwards: refile };
        }
        case 'untreated':
          if (body.animal_id !== null) touched.animals.add(body.animal_id);
          return as(
            dayBook.addUntreated(
              {
                id: body.id,
                kind: body.kind,
                animalId: body.animal_id,
                offerId: body.offer_id,
                reason: body.reason,
                weightGrams: body.weight_g,
                atMs: body.at_ms,
                by: body.by,
                clockTrusted: body.clock_trusted === null ? null : body.clock_trusted === 1,
              },
              received,
            ),
          );
        case 'weighing':
          return as(`${ofAnimal(kind, body, touched).number}:${body.at_ms}:${body.mass_g}`);
        case 'weight-word':
        case 'score':
        case 'score-taken-back':
        case 'note':
          return as(ofAnimal(kind, body, touched).row);
        case 'reduction-test': {
          touched.worms = true;
          const { animals: members, ...row } = body;
          const test = insert('reduction_tests', row);
          for (const { animal, treatment_id } of members)
            insert('reduction_test_animals', { test, animal: numberIn(animalNumber, animal), treatment_id });
          return as(test);
        }
        case 'reduction-test-end': {
          touched.worms = true;
          const test = numberIn(testNumber, body.test);
          // Ended at two kiosks: the end that came first stands.
          insert('reduction_test_ends', { ...body, test }, 'OR IGNORE');
          return as(test);
        }
        case 'egg-count': {
          touched.worms = true;
          const { animals: members, test, ...row } = body;
          const count = insert('egg_counts', {
            ...row,
            test: test === null ? null : numberIn(testNumber, test),
          });
          for (const animal of members)
            insert('egg_count_animals', { count, animal: numberIn(animalNumber, animal) });
          return as(count);
        }
        case 'egg-count-correction':
          touched.worms = true;
          return as(plain(kind, body));
        case 'clock-correction': {
          touched.clock = true;
          const { sequence, refile } = dayBook.receiveClock(body, received);
          const afterwards = () => {
            for (const { treatment } of refile()) touched.treatments.add(treatment.id);
          };
          return { ...as(sequence), afterwards };
        }
      }
    },
  };
}
