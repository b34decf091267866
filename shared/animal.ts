import { z } from 'zod';
import type * as animal from '../core/herd/animal.ts';

/** The species the kiosk knows. */
export const Species = z.enum(['goat', 'sheep', 'cattle']) satisfies z.ZodType<animal.Species>;
/** What an animal is on the farm. */
export const AnimalClass = z.enum([
  'female',
  'male',
  'castrate',
  'young',
]) satisfies z.ZodType<animal.AnimalClass>;

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
});
/** One animal of the herd as the screen and HTTP see it. */
export type AnimalView = z.infer<typeof AnimalView>;
