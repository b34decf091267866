import { z } from 'zod';
import type { WeightWord } from '../../core/growth/weighing.ts';
import { recordsOf } from './merged.ts';
import type { Db } from './open-store.ts';

const Row = z.strictObject({
  weighing: z.string(),
  said: z.enum(['true', 'wrong']).nullable(),
  hours_off_feed: z.number().nullable(),
});

/** What was said of the weights of an animal after they were taken, by the id of the weighing; the last word counts. */
export interface WeightWords {
  readonly said: ReadonlyMap<string, WeightWord>;
  readonly hoursOffFeed: ReadonlyMap<string, number>;
}

/** Words on weights, on disk. A weight itself is never edited, wherever it stands. */
export function createWeightWordStore(db: Db) {
  const insert = db.prepare(
    `INSERT INTO weight_words (animal, weighing, said, hours_off_feed, at_ms, by)
     VALUES ((SELECT number FROM animals WHERE id = @animalId), @weighing, @said, @hours, @atMs, @by)`,
  );
  const of = db.prepare(
    `SELECT weighing, said, hours_off_feed FROM weight_words
     WHERE animal IN ${recordsOf('?')} ORDER BY sequence`,
  );
  return {
    /** Writes a word on a weight: whether it is true, or how long the animal was off feed before it. */
    add(
      animalId: string,
      weighing: string,
      word: { readonly said: WeightWord } | { readonly hoursOffFeed: number },
      by: string,
      atMs: number,
    ): void {
      const said = 'said' in word ? word.said : null;
      const hours = 'hoursOffFeed' in word ? word.hoursOffFeed : null;
      insert.run({ animalId, weighing, said, hours, atMs, by });
    },
    /** All that was said of the weights of an animal. */
    of(animalId: string): WeightWords {
      const said = new Map<string, WeightWord>();
      const hoursOffFeed = new Map<string, number>();
      for (const raw of of.all(animalId)) {
        const row = Row.parse(raw);
        if (row.said !== null) said.set(row.weighing, row.said);
        if (row.hours_off_feed !== null) hoursOffFeed.set(row.weighing, row.hours_off_feed);
      }
      return { said, hoursOffFeed };
    },
  };
}
