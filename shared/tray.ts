import { z } from 'zod';

/** The three devices with a cable. */
export const DeviceRole = z.enum(['platform', 'bench', 'wand']);
/** One of the three devices with a cable. */
export type DeviceRole = z.infer<typeof DeviceRole>;

/**
 * What the demo's bench tray can do to the simulated scales and wand. Refused outside the demo.
 *
 * Masses in grams. `lead-on` without `grams` uses the animal's last weight.
 */
export const TrayAction = z.discriminatedUnion('do', [
  z.strictObject({
    do: z.literal('lead-on'),
    animalId: z.string(),
    grams: z.number().positive().max(2_000_000).nullable(),
    grade: z.enum(['calm', 'restless', 'violent']),
  }),
  z.strictObject({ do: z.literal('walk-off') }),
  z.strictObject({ do: z.literal('present-tag'), animalId: z.string() }),
  z.strictObject({ do: z.literal('place-jug') }),
  z.strictObject({ do: z.literal('lift-jug') }),
  z.strictObject({ do: z.literal('pour'), gramsPerSecond: z.number().min(0).max(500) }),
  z.strictObject({ do: z.literal('add-powder'), packets: z.number().positive().max(3) }),
  /** Does to the scales what the check under way asks for now; without one, takes all that it left there off. */
  z.strictObject({ do: z.literal('as-asked') }),
  /** Puts another bench scale there: one by 1 g that carries 5 kg, or one by 0.01 g that carries 500 g. */
  z.strictObject({ do: z.literal('swap-bench'), fine: z.boolean() }),
  z.strictObject({ do: z.literal('pull-cable'), role: DeviceRole }),
  z.strictObject({ do: z.literal('plug-cable'), role: DeviceRole }),
]);
/** One thing the bench tray can do. */
export type TrayAction = z.infer<typeof TrayAction>;
