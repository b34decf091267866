import { z } from 'zod';

/**
 * How well a figure is known: read in a primary source, read in a secondary one, set by this project as a guard,
 * or an estimate from comparable things. A figure recalled from memory has no place here: it ships as unknown.
 */
export const Evidence = z.enum(['primary', 'secondary', 'own-guard', 'estimate']);
/** One of the four kinds of {@link Evidence}. */
export type Evidence = z.infer<typeof Evidence>;

/** A figure with where it comes from. */
export const Figure = z.strictObject({
  value: z.number().positive(),
  evidence: Evidence,
  source: z.string().min(8),
});
/** A figure with where it comes from. */
export type Figure = z.infer<typeof Figure>;

/** How long meat or milk must be kept back: a known number of hours, never, or not known. */
export const Withdrawal = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('hours'),
    hours: z.number().nonnegative(),
    evidence: Evidence,
    source: z.string(),
  }),
  z.strictObject({ kind: z.literal('not-for-people'), source: z.string() }),
  z.strictObject({ kind: z.literal('unknown'), source: z.string() }),
]);
/** How long meat or milk must be kept back. */
export type Withdrawal = z.infer<typeof Withdrawal>;

/** The rule for giving one medicine to one species. */
export const Regimen = z.strictObject({
  id: z.string(),
  species: z.enum(['goat', 'sheep', 'cattle']),
  use: z.enum(['label', 'extra-label']),
  route: z.literal('oral drench'),
  /** Target rate in mg/kg. */
  target: Figure,
  /** The rate never to be passed, in mg/kg. */
  ceiling: Figure,
  /** The rate below which worms are bred resistant, in mg/kg; `null` where no source gives one. */
  floor: Figure.nullable(),
  /** Days before the same active may be given again without asking. */
  repeatAfterDays: Figure,
  meat: Withdrawal,
  milk: Withdrawal,
  /** What the keeper must know, one short line each. */
  notes: z.array(z.string()),
});
/** The rule for giving one medicine to one species. */
export type Regimen = z.infer<typeof Regimen>;

/** A packet of powder as sold, to be dissolved in water. */
export const Packet = z
  .strictObject({
    id: z.string(),
    /** Mass of all the powder in the packet, in grams. */
    grossGrams: Figure,
    /** Mass of the active in it, in grams. */
    activeGrams: Figure,
    /** Volume each gram of powder adds when dissolved, in mL/g, with the half-width it is believed within. */
    volumePerGram: Figure.extend({ low: z.number().positive(), high: z.number().positive() }),
    /** Final volume the packet is made up to, in mL. */
    madeUpToMl: Figure,
    /** Standard uncertainty of the active mass, as a share of it. */
    activeUncertainty: Figure,
  })
  .refine((packet) => packet.activeGrams.value < packet.grossGrams.value, {
    message: 'the active weighs less than the whole powder: were the two figures swapped?',
  });
/** A packet of powder as sold. */
export type Packet = z.infer<typeof Packet>;

/** One active ingredient: its packets, its rules and its hazards. Generic names only. */
export const Medicine = z.strictObject({
  id: z.string(),
  /** Name on the screen. */
  name: z.string(),
  /** Name of the active as it is logged. */
  active: z.string(),
  packets: z.array(Packet).min(1),
  regimens: z.array(Regimen).min(1),
  /** What to do with the jug before each draw. */
  agitate: z.enum(['swirl', 'shake']),
  /** Hours a mixed jug stays in use. */
  jugLifeHours: Figure,
  /** What the person mixing must know. */
  handling: z.array(z.string()).min(1),
});
/** One active ingredient with its packets and rules. */
export type Medicine = z.infer<typeof Medicine>;

/** The rule for a species, or `undefined` where the medicine has none. */
export function regimenFor(medicine: Medicine, species: Regimen['species']): Regimen | undefined {
  return medicine.regimens.find((regimen) => regimen.species === species);
}
