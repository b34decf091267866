import { z } from 'zod';
import { ceilingTooLow, floorTooHigh, keepsNothingBack, ratesDisagree } from './contradictions.ts';
import { Figure, isKnown, Line, Unknown } from './figure.ts';
import { Limits } from './limits.ts';
import { Withdrawal } from './withdrawal.ts';

/** How a dose gets into the animal. */
export const Route = z.enum(['oral drench', 'under the skin', 'into the muscle', 'as the vet directs']);
/** One of the routes. */
export type Route = z.infer<typeof Route>;

/** What every regimen states, whoever may follow it. */
export const REGIMEN_FIELDS = {
  id: z.string().min(1).max(64),
  species: z.enum(['goat', 'sheep', 'cattle']),
  use: z.enum(['label', 'extra-label']),
  route: Route,
  /** What it is for where the rule is for one thing only, such as liver fluke; `null` otherwise. */
  purpose: z.string().min(3).max(60).nullable(),
  /** The presentations it is for; `null` for all of the medicine. */
  presentationIds: z.array(z.string()).min(1).nullable(),
  /** The rate below which worms are bred resistant, in mg/kg; `null` where no source gives one. */
  floor: Figure.nullable(),
  /** Days before the same active may be given again without asking; below one, a further dose is a stop for as long. */
  repeatAfterDays: Figure,
  /** Whether what stayed in the syringe of a part dose may be given after it; a source must allow it. */
  topUp: z.boolean(),
  limits: Limits,
  meat: Withdrawal,
  milk: Withdrawal,
  /** Volumes a label or chart prints for a weight, to hold rate and strength against. */
  printed: z.array(
    z.strictObject({
      presentationId: z.string(),
      ml: z.number().positive(),
      per: z.number().positive(),
      unit: z.enum(['kg', 'lb']),
    }),
  ),
  /** What the keeper must know, one short line each. */
  notes: z.array(Line),
};

/** The rule for giving one medicine to one species, as it ships: what no source gives is unknown. */
export const Regimen = z
  .strictObject({
    ...REGIMEN_FIELDS,
    /** Target rate in mg/kg, and as the label prints it in mg/lb. */
    target: z.discriminatedUnion('evidence', [
      Figure.extend({ printedMgPerLb: z.number().positive().optional() }),
      Unknown,
    ]),
    /** The rate never to be passed, in mg/kg; `null` where no source gives one, and the project's own guard stands. */
    ceiling: Figure.nullable(),
  })
  .check(({ value: regimen, issues }) => {
    const refuse = (path: string[], message: string | null): void => {
      if (message !== null) issues.push({ code: 'custom', path, message, input: regimen });
    };
    const { target, ceiling, floor, meat, milk } = regimen;
    if (meat.kind === 'hours') refuse(['meat'], keepsNothingBack(meat.hours));
    if (milk.kind === 'hours') refuse(['milk'], keepsNothingBack(milk.hours));
    if (!isKnown(target)) return;
    if (target.printedMgPerLb !== undefined)
      refuse(['target'], ratesDisagree(target.value, target.printedMgPerLb));
    if (ceiling !== null) refuse(['ceiling'], ceilingTooLow(ceiling.value, target.value));
    if (floor !== null) refuse(['floor'], floorTooHigh(floor.value, target.value));
  });
/** The rule for giving one medicine to one species, as it ships. */
export type Regimen = z.infer<typeof Regimen>;
