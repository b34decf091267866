import { z } from 'zod';
import {
  CLASS_RULE_NAMES,
  HERD_RULE_NAMES,
  type OwnThreshold,
  type RulePlace,
} from '../../core/worms/farm-rules.ts';
import { AnimalClass } from '../../shared/animal.ts';
import type { Db } from './open-store.ts';

const Row = z.strictObject({
  rule: z.enum([...CLASS_RULE_NAMES, ...HERD_RULE_NAMES]),
  season: z.enum(['high', 'low']).nullable(),
  class: AnimalClass.nullable(),
  value: z.number().nullable(),
  word: z.enum(['farm', 'veterinarian']),
  at_ms: z.int(),
  by: z.string(),
});

/** Thresholds a farm set itself, on disk: each word stands beside the one before it. */
export function createWormRuleStore(db: Db) {
  const all = db.prepare(
    'SELECT rule, season, class, value, word, at_ms, by FROM worm_rules ORDER BY sequence',
  );
  const add = db.prepare(
    `INSERT INTO worm_rules (rule, season, class, value, word, at_ms, by)
     VALUES (@rule, @season, @class, @value, @word, @atMs, @by)`,
  );
  return {
    /** The farm's thresholds in force: the latest word on each place, without those put back to the shipped value. */
    inForce(): OwnThreshold[] {
      const latest = new Map<string, OwnThreshold>();
      for (const raw of all.all()) {
        const { rule, season, class: kind, value, word, by, at_ms: atMs } = Row.parse(raw);
        const place = [rule, season, kind].join();
        if (value === null) latest.delete(place);
        else latest.set(place, { rule, season, class: kind, value, word, by, atMs });
      }
      return [...latest.values()];
    },
    /** Writes one threshold; a value of `null` puts it back to the shipped one. */
    set(place: RulePlace, said: Pick<OwnThreshold, 'word' | 'by' | 'atMs'> & { value: number | null }): void {
      add.run({ ...place, ...said });
    },
  };
}
