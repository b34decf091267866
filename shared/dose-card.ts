import { z } from 'zod';
import { FigureView } from './shed.ts';

/** A figure with how it is known and where it was read; `null` where no source gives one. */
const sourced = FigureView.omit({ label: true, unit: true });

/** Why this volume: what the dose on offer rests on, how sure each part is, and what would help. */
export const DoseCardView = z.strictObject({
  offerId: z.string(),
  /** Rates in mg/kg. */
  target: sourced,
  ceiling: sourced,
  floor: sourced,
  /** Who approved the rule, when, and on whose word. */
  approved: z.strictObject({
    by: z.string(),
    /** RFC 3339. */
    at: z.string(),
    direction: z.enum(['label', 'veterinarian']),
    vet: z.string().nullable(),
  }),
  passesCeiling: z.boolean(),
  /** `null` where no floor is known. */
  passesFloor: z.boolean().nullable(),
  parts: z.array(
    z.strictObject({
      of: z.enum(['weight', 'strength', 'syringe']),
      /** How far it may be off, either way, as a share of itself (k = 2). */
      off: z.number().nonnegative(),
      /** How far that moves the rate delivered, either way, in mg/kg (k = 2). */
      moves: z.number().nonnegative(),
      /** Its part of the whole doubt; the shares add to 1, or are all 0. */
      share: z.number(),
    }),
  ),
  /** The cause of most of the doubt. */
  leads: z.enum(['weight', 'strength', 'syringe']),
  /** Where the strength in the jug comes from. */
  mixed: z.strictObject({
    /** RFC 3339. */
    at: z.string(),
    by: z.string(),
    volumeMl: z.number().positive(),
    /** Where the active in it was read; `null` for a medicine no longer known. */
    source: z.string().nullable(),
  }),
  /** Whether the tolerance of the syringe was weighed here, or is what its standard allows. */
  tolerance: z.enum(['weighed', 'standard']),
  /** Best first. */
  advice: z.array(
    z.strictObject({
      change: z.enum(['other-syringe', 'fewer-draws', 'double-dilution', 'surer-weight']),
      syringeName: z.string(),
      syringeGraduationMl: z.number().positive(),
      volumeMl: z.number().positive(),
      draws: z.number().int().positive(),
      deliveredMgPerKg: z.strictObject({ low: z.number(), high: z.number() }),
    }),
  ),
});
/** Why this volume. */
export type DoseCardView = z.infer<typeof DoseCardView>;
