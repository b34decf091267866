import { z } from 'zod';

/**
 * How well a figure is known: read in a primary source, read in a secondary one, set by this project as a guard, an
 * estimate from comparable things, entered by a person of this farm, or directed by its veterinarian.
 *
 * A figure recalled from memory has no place among them: it ships as {@link Unknown}.
 */
export const Evidence = z.enum(['primary', 'secondary', 'own-guard', 'estimate', 'entered', 'directed']);
/** One of the kinds of {@link Evidence}. */
export type Evidence = z.infer<typeof Evidence>;

/** Where something was read, with its edition or date; long enough to find it again. */
const source = z.string().min(8).max(400);

/** A figure with where it comes from. */
export const Figure = z.strictObject({ value: z.number().positive(), evidence: Evidence, source });
/** A figure with where it comes from. */
export type Figure = z.infer<typeof Figure>;

/** A figure nobody has read in a source; `source` says what was looked for, or what is only recalled. */
export const Unknown = z.strictObject({ evidence: z.literal('unknown'), source });
/** A figure nobody has read in a source. */
export type Unknown = z.infer<typeof Unknown>;

/** A figure, or that it is not known. */
export const MaybeFigure = z.discriminatedUnion('evidence', [Figure, Unknown]);
/** A figure, or that it is not known. */
export type MaybeFigure = z.infer<typeof MaybeFigure>;

/** Whether a figure is known. */
export function isKnown<F extends Figure>(figure: F | Unknown): figure is F {
  return figure.evidence !== 'unknown';
}

/** A sentence for the keeper with where it comes from; `common-practice` is said in the trade, and has no source. */
export const Line = z.strictObject({
  text: z.string().min(3).max(160),
  evidence: z.enum(['primary', 'secondary', 'own-guard', 'common-practice', 'entered']),
  source,
});
/** A sentence for the keeper with where it comes from. */
export type Line = z.infer<typeof Line>;
