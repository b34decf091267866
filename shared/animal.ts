import { z } from 'zod';
import type * as animal from '../core/herd/animal.ts';
import { ANIMAL_NOTES } from '../core/herd/picked.ts';
import type * as whom from '../core/worms/who-to-treat.ts';

/** The species the kiosk knows. */
export const Species = z.enum(['goat', 'sheep', 'cattle']) satisfies z.ZodType<animal.Species>;
/** What an animal is on the farm. */
export const AnimalClass = z.enum([
  'female',
  'male',
  'castrate',
  'young',
]) satisfies z.ZodType<animal.AnimalClass>;

/** What can be noted of an animal, picked from a list. */
export const AnimalNote = z.enum(ANIMAL_NOTES);
/** What can be noted of an animal, picked from a list. */
export type AnimalNote = z.infer<typeof AnimalNote>;

/** What to do with an animal today by the farm's rules. */
export const Advice = z.enum(['treat', 'leave', 'look-again']) satisfies z.ZodType<whom.Advice>;
/** What to do with an animal today by the farm's rules. */
export type Advice = z.infer<typeof Advice>;

/** One animal of the herd as the screen and HTTP see it. */
export const AnimalView = z.strictObject({
  id: z.string(),
  name: z.string(),
  species: Species,
  class: AnimalClass,
  /** 15 digits, or `null`. */
  tag: z.string().nullable(),
  inMilk: z.boolean(),
  /** RFC 3339, or `null` where not known. */
  bornAt: z.string().nullable(),
  /** RFC 3339, or `null` where not known to be bred. */
  bredAt: z.string().nullable(),
  /** RFC 3339: when the males were taken away; `null` where not known. */
  malesRemovedAt: z.string().nullable(),
  lastWeightGrams: z.number().nullable(),
  /** RFC 3339, or `null` where never weighed. */
  lastWeighedAt: z.string().nullable(),
  /** Numbers and letters of its visual tags. */
  visualTags: z.array(z.string()),
  /** Ids of other animals on the farm that carry one of its numbers: picked by it, either may be meant. */
  shares: z.array(z.string()),
  pen: z.string().nullable(),
  /** A colour mark on its coat. */
  mark: z.string().nullable(),
  /** What its photo is called at `GET /api/photos/:name`; `null` where there is none. */
  photo: z.string().nullable(),
  /** RFC 3339, or `null` where not known. */
  kiddedAt: z.string().nullable(),
  /** RFC 3339, or `null` where not in milk or not known. */
  inMilkSince: z.string().nullable(),
  /** What to do with it today; `null` where it was not scored lately. */
  advice: Advice.nullable(),
  /** RFC 3339: when it was scored last; `null` where never, or where that was taken back. */
  scoredAt: z.string().nullable(),
});
/** One animal of the herd as the screen and HTTP see it. */
export type AnimalView = z.infer<typeof AnimalView>;
