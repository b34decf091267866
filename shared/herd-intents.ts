import { z } from 'zod';
import { LONGEST_OFF_FEED } from '../core/growth/weighing.ts';
import { MERGE_FIELDS } from '../core/herd/merge.ts';
import { MARKS } from '../core/herd/picked.ts';
import { AnimalClass, AnimalNote, Species } from './animal.ts';
import { intentId as id, ref } from './refs.ts';
import { RuleNameView } from './worm-rules.ts';

/** One thing set right about an animal; days are dates such as "2026-04-30". */
export const AnimalEditView = z.discriminatedUnion('what', [
  z.strictObject({ what: z.literal('name'), name: z.string().trim().min(1).max(24) }),
  z.strictObject({ what: z.literal('class'), class: AnimalClass }),
  z.strictObject({ what: z.literal('milk'), inMilk: z.boolean() }),
  z.strictObject({
    what: z.literal('day'),
    day: z.enum(['born', 'bred', 'males-removed', 'kidded', 'in-milk-since']),
    on: z.iso.date().nullable(),
  }),
  z.strictObject({ what: z.literal('pen'), pen: z.string().trim().min(1).max(30).nullable() }),
  z.strictObject({ what: z.literal('mark'), mark: z.enum(MARKS).nullable() }),
  /** The name `POST /api/photos` answered with. */
  z.strictObject({ what: z.literal('photo'), photo: z.string().max(60).nullable() }),
]);
/** One thing set right about an animal. */
export type AnimalEditView = z.infer<typeof AnimalEditView>;

/** Signs scored at one look; `null` for each that was not looked at. */
export const ScoredView = z.strictObject({
  /** 1 red to 5 white; sheep and goats only. */
  eyelid: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(5)]).nullable(),
  /** 1 to 5 in halves. */
  body: z.number().min(1).max(5).multipleOf(0.5).nullable(),
  /** 0 none to 5. */
  soiling: z.number().int().min(0).max(5).nullable(),
  jaw: z.enum(['none', 'swollen']).nullable(),
  /** Goats only. */
  coat: z.enum(['smooth', 'rough']).nullable(),
});
/** Signs scored at one look. */
export type ScoredView = z.infer<typeof ScoredView>;

/** What a person can want of the herd. */
export const HERD_INTENTS = [
  z.strictObject({ type: z.literal('edit-animal'), id, animalId: ref, edit: AnimalEditView }),
  /** A new electronic tag for a lost one, or the first. */
  z.strictObject({ type: z.literal('retag'), id, animalId: ref, tag: z.string().max(32) }),
  /** A new visual tag; `lost` is the one it takes the place of, `null` where it is one more. */
  z.strictObject({
    type: z.literal('retag-visual'),
    id,
    animalId: ref,
    lost: z.string().max(30).nullable(),
    fresh: z.string().trim().min(1).max(30),
  }),
  /** Sold or dead: kept, and shown no more. */
  z.strictObject({ type: z.literal('leave-herd'), id, animalId: ref, how: z.enum(['sold', 'died']) }),
  /**
   * Two records are one animal: the first goes on, the second is read under it. Where the two say different things, the
   * choices say which is right.
   */
  z.strictObject({
    type: z.literal('merge-animals'),
    id,
    keptId: ref,
    goneId: ref,
    choices: z.partialRecord(z.enum(MERGE_FIELDS), z.enum(['kept', 'gone'])),
  }),
  /** Two records that were merged are two animals after all; `goneId` is the one that was merged away. */
  z.strictObject({ type: z.literal('part-animals'), id, goneId: ref }),
  z.strictObject({ type: z.literal('score'), id, animalId: ref, scored: ScoredView }),
  /** What was scored then was of another animal, or wrong: it counts no more. RFC 3339 of the score. */
  z.strictObject({ type: z.literal('take-back-score'), id, animalId: ref, scoredAt: z.iso.datetime() }),
  z.strictObject({ type: z.literal('note-animal'), id, animalId: ref, note: AnimalNote }),
  /** A person's word on a weight: it is true, however odd, or it is wrong and counts no more. */
  z.strictObject({
    type: z.literal('say-weight'),
    id,
    animalId: ref,
    weighingId: ref,
    said: z.enum(['true', 'wrong']),
  }),
  /** How long an animal was off feed before a weight; with `round`, so are all weighed from then on. */
  z.strictObject({
    type: z.literal('weight-off-feed'),
    id,
    animalId: ref,
    weighingId: ref,
    hours: z.number().min(0).max(LONGEST_OFF_FEED),
    round: z.boolean(),
  }),
  z.strictObject({ type: z.literal('set-worm-season'), id, season: z.enum(['high', 'low']) }),
  /** The mean of the mob's last egg counts, in eggs per gram; `null` where none is known. */
  z.strictObject({
    type: z.literal('set-egg-mean'),
    id,
    eggsPerGram: z.number().min(0).max(100_000).nullable(),
  }),
  /**
   * A threshold of whom to treat; class or season `null` for all, value `null` for the shipped one. The herd's own
   * thresholds take neither.
   */
  z.strictObject({
    type: z.literal('set-worm-rule'),
    id,
    rule: RuleNameView,
    season: z.enum(['high', 'low']).nullable(),
    class: AnimalClass.nullable(),
    value: z.number().nullable(),
    word: z.enum(['farm', 'veterinarian']),
  }),
  /** Reads a file of the import folder as a preview; nothing is written. */
  z.strictObject({ type: z.literal('import-read'), id, file: z.string().min(1).max(255) }),
  /** Judges the file that was read anew, by what the keeper says of it. */
  z.strictObject({
    type: z.literal('import-judge'),
    id,
    dateOrder: z.enum(['day-first', 'month-first']).nullable(),
    species: Species.nullable(),
  }),
  /** Takes all good rows of a preview in, or none. */
  z.strictObject({ type: z.literal('import-accept'), id, preview: ref }),
  /** Puts the file aside; nothing is written. */
  z.strictObject({ type: z.literal('import-drop'), id }),
] as const;
