import { z } from 'zod';
import { activeTooHeavy, mixDisagrees, strengthsDisagree } from './contradictions.ts';
import { Figure } from './figure.ts';
import { sameVolume } from './printed.ts';

const NamedVolume = z.strictObject({
  amount: z.number().positive(),
  unit: z.enum(['mL', 'L', 'US quart', 'US gallon', 'US fl oz']),
});

/** A packet of powder as sold, to be dissolved in water. */
export const Packet = z
  .strictObject({
    form: z.literal('powder'),
    id: z.string().min(1).max(64),
    /** Mass of all the powder in the packet, in grams. */
    grossGrams: Figure,
    /** Mass of the active in it, in grams. */
    activeGrams: Figure,
    /** Volume each gram of powder adds when dissolved, in mL/g, with the half-width it is believed within. */
    volumePerGram: Figure.extend({ low: z.number().positive(), high: z.number().positive() }),
    /** Final volume the packet is made up to, in mL, and as its label names it. */
    madeUpToMl: Figure.extend({ named: NamedVolume.optional() }),
    /** The strength the label prints for the mix, in mg/mL; doses never follow it. */
    printedMgPerMl: z.number().positive().optional(),
    /** Standard uncertainty of the active mass, as a share of it. */
    activeUncertainty: Figure,
    /** Hours a mixed jug stays in use. */
    jugLifeHours: Figure,
  })
  .check(({ value: packet, issues }) => {
    const refuse = (path: string[], message: string | null): void => {
      if (message !== null) issues.push({ code: 'custom', path, message, input: packet });
    };
    const { grossGrams, activeGrams, madeUpToMl, printedMgPerMl } = packet;
    refuse(['activeGrams'], activeTooHeavy(activeGrams.value, grossGrams.value));
    if (madeUpToMl.named !== undefined && !sameVolume(madeUpToMl.value, madeUpToMl.named))
      refuse(['madeUpToMl'], 'the volume in mL is not the one named: quart, gallon or litre mixed up?');
    if (printedMgPerMl !== undefined)
      refuse(['printedMgPerMl'], mixDisagrees(activeGrams.value, madeUpToMl.value, printedMgPerMl));
  });
/** A packet of powder as sold. */
export type Packet = z.infer<typeof Packet>;

/** A liquid that is dosed as it comes, out of its bottle. */
export const Liquid = z
  .strictObject({
    form: z.literal('liquid'),
    id: z.string().min(1).max(64),
    /** Strength in mg/mL. */
    strength: Figure.extend({ percent: z.number().positive().max(100).optional() }),
    /** Standard uncertainty of the strength on the label, as a share of it (k = 1). */
    strengthUncertainty: Figure,
    /** Sizes of bottle to pick from, in mL; the bottle in hand wins. */
    bottlesMl: z.array(z.number().positive().max(20_000)).min(1),
    /** Days a bottle stays in use once it is opened; its printed expiry may end it sooner. */
    openLifeDays: Figure,
  })
  .check(({ value: liquid, issues }) => {
    const { value, percent } = liquid.strength;
    const message = percent === undefined ? null : strengthsDisagree(value, percent);
    if (message !== null) issues.push({ code: 'custom', path: ['strength'], message, input: liquid });
  });
/** A liquid that is dosed as it comes. */
export type Liquid = z.infer<typeof Liquid>;

/** What a medicine is sold as. */
export const Presentation = z.discriminatedUnion('form', [Packet, Liquid]);
/** What a medicine is sold as. */
export type Presentation = z.infer<typeof Presentation>;
