import { z } from 'zod';

/** A quantity of one unit as it stands in a record on disk. */
export function storedQuantity<U extends string>(unit: U) {
  return z.strictObject({ unit: z.literal(unit), value: z.number() });
}

/** What a check by weighing found of a syringe, as it stands in a record on disk. */
export const StoredMeasure = z.strictObject({
  mark: storedQuantity('mL'),
  bias: storedQuantity('mL'),
  biasUncertainty: storedQuantity('mL'),
  spread: storedQuantity('mL'),
});

/** The lot of the stock a jug or a bottle came from, as it stands on disk. */
export const StoredJugLot = z.strictObject({
  lotId: z.string(),
  lot: z.string().nullable(),
  expiresAtMs: z.number(),
  pieces: storedQuantity('piece'),
});

/** What a mix stood in and weighed, as it stands on disk. */
export const StoredWeighed = z.strictObject({
  vesselId: z.string(),
  letter: z.string(),
  empty: storedQuantity('g'),
  contents: storedQuantity('g'),
  uncertainty: storedQuantity('g'),
});
