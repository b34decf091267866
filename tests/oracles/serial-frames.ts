/**
 * Serial frames as printed in published documents, or constructed from their field tables, with what they mean.
 *
 * `source`: "printed" frames stand in a published manual or note, "printed form" ones were seen in use in the printed
 * form, "constructed" ones were made from the published field layout. Blanks are padded to the published field width.
 */
export type FrameSource =
  | 'printed, 1999 protocol manual'
  | 'printed, indicator manual'
  | 'printed, protocol page'
  | 'printed form, device note'
  | 'printed form, public note'
  | 'printed, public note'
  | 'constructed from the field table';

/** What a weight frame must be read as. Masses in grams; a fault makes the mass 0. */
export interface ExpectedReading {
  readonly grams: number;
  readonly division: number;
  readonly moving: boolean;
  readonly net: boolean;
  readonly zero: boolean;
  readonly fault?: string;
}

/** The settings a frame is read with, where its format needs any. */
export interface FrameSettings {
  readonly unit?: 'kg' | 'g' | 'lb' | 'oz';
  readonly noTare?: boolean;
}

/** One frame on the wire and its meaning. */
export interface WeightFrame {
  readonly wire: string;
  readonly source: FrameSource;
  readonly reading: ExpectedReading;
  readonly settings?: FrameSettings;
}

/** One frame that is sound but carries no weight, or is broken, and the name of the reason. */
export interface RefusedFrame {
  readonly wire: string;
  readonly source: FrameSource;
  readonly fault: string;
  readonly settings?: FrameSettings;
}

/** Frames broken on purpose, one rule each: wire, name of the fault, settings. */
export function broken(
  list: readonly (readonly [string, string, FrameSettings?])[],
): readonly RefusedFrame[] {
  return list.map(([wire, fault, settings]) => ({
    wire,
    fault,
    source: 'constructed from the field table',
    ...(settings !== undefined && { settings }),
  }));
}

/** Grams in a pound: Weights and Measures Act 1985 (UK), Schedule 1 Part V. */
export const LB = 453.59237;
/** A steady gross weight away from zero. */
export const PLAIN = { moving: false, net: false, zero: false } as const;

/** Polled 20-byte replies. */
export const SMA_FRAMES: readonly WeightFrame[] = [
  {
    wire: '\n 1G       5.025lb \r',
    source: 'printed, 1999 protocol manual',
    reading: { ...PLAIN, grams: 5.025 * LB, division: 0.001 * LB },
  },
  {
    wire: '\n 1N      100000lb \r',
    source: 'printed, 1999 protocol manual',
    reading: { ...PLAIN, net: true, grams: 100000 * LB, division: LB },
  },
  {
    wire: '\n 1g      5.0025lb \r',
    source: 'printed, 1999 protocol manual',
    reading: { ...PLAIN, grams: 5.0025 * LB, division: 0.0001 * LB },
  },
  {
    wire: '\nZ1G       0.000lb \r',
    source: 'printed, 1999 protocol manual',
    reading: { ...PLAIN, zero: true, grams: 0, division: 0.001 * LB },
  },
  {
    wire: '\n 1G       7.025kg \r',
    source: 'printed, 1999 protocol manual',
    reading: { ...PLAIN, grams: 7025, division: 1 },
  },
  {
    wire: '\n 1GM      7.650kg \r',
    source: 'printed, 1999 protocol manual',
    reading: { ...PLAIN, moving: true, grams: 7650, division: 1 },
  },
  {
    wire: '\n 1n  ----------   \r',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, net: true, grams: 0, division: 1, fault: 'unstable-timeout' },
  },
  {
    wire: '\nE1GM ----------kg_\r',
    source: 'printed, protocol page',
    reading: { ...PLAIN, moving: true, grams: 0, division: 1, fault: 'zero-error' },
  },
  {
    wire: '\n 1N       0.000kg_\r',
    source: 'printed, protocol page',
    reading: { ...PLAIN, net: true, grams: 0, division: 1 },
  },
  {
    wire: '\n 1N       1.250kg_\r',
    source: 'printed, protocol page',
    reading: { ...PLAIN, net: true, grams: 1250, division: 1 },
  },
  {
    wire: '\nO1G      300.05kg \r',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 10, fault: 'over' },
  },
  {
    wire: '\nU1G       -0.35kg \r',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 10, fault: 'under' },
  },
  {
    wire: '\nI1G  ----------lb \r',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'zero-error' },
  },
  {
    wire: '\nT1G  ----------lb \r',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'tare-error' },
  },
  {
    wire: '\ne1G  ----------kg \r',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'not-displayed' },
  },
  {
    wire: '\n 1G       -1.25kg \r',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: -1250, division: 10 },
  },
  {
    wire: '\n 1G         943g  \r',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 943, division: 1 },
  },
  {
    wire: '\n 1G         943g__\r',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 943, division: 1 },
  },
  {
    wire: '\n 3G        16.0oz \r',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: LB, division: 0.1 * (LB / 16) },
  },
];

/** The tare told on request: a mass, but not what stands on the scale. */
export const SMA_TARE = {
  wire: '\n 1T       0.200kg_\r',
  source: 'printed, protocol page',
  grams: 200,
} as const;

/** Frames of the polled protocol that carry no weight. */
export const SMA_OTHER: readonly RefusedFrame[] = [
  { wire: '\n?\r', source: 'printed, indicator manual', fault: 'command-refused' },
  { wire: '\n!\r', source: 'printed, indicator manual', fault: 'command-garbled' },
  { wire: '\n    \r', source: 'printed, indicator manual', fault: 'not-a-weight' },
  { wire: '\nSMA:1/1.0\r', source: 'printed, indicator manual', fault: 'not-a-weight' },
  { wire: '\nREV:01.01.9\r', source: 'printed, indicator manual', fault: 'not-a-weight' },
  { wire: '\nSN :148388723\r', source: 'printed, indicator manual', fault: 'not-a-weight' },
  { wire: '\nTYP:S\r', source: 'printed, indicator manual', fault: 'not-a-weight' },
  { wire: '\nCAP:kg :6000:1:0\r', source: 'printed, indicator manual', fault: 'not-a-weight' },
  { wire: '\nCMD:HPTMCR\r', source: 'printed, indicator manual', fault: 'not-a-weight' },
  { wire: '\nEND:\r', source: 'printed, indicator manual', fault: 'not-a-weight' },
];

/** Replies broken on purpose, one rule each. */
export const SMA_BROKEN: readonly RefusedFrame[] = broken([
  ['\n 1G      5.025lb \r', 'bad-width'],
  ['\n 1G        5.025lb \r', 'bad-width'],
  ['\n\r', 'bad-width'],
  ['\n?1G       5.025lb \r', 'bad-header'],
  ['\n 4G       5.025lb \r', 'bad-header'],
  ['\n 1X       5.025lb \r', 'bad-header'],
  ['\n 1Gm      5.025lb \r', 'bad-header'],
  ['\n 1G F     5.025lb \r', 'bad-header'],
  ['\n 1G  5.025     lb \r', 'bad-number'],
  ['\n 1G       5,025lb \r', 'bad-number'],
  ['\n 1G       5.0.5lb \r', 'bad-number'],
  ['\n 1G       5 025lb \r', 'bad-number'],
  ['\n 1G        943.g  \r', 'bad-number'],
  ['\n 1G       .9430g  \r', 'bad-number'],
  ['\n 1G       +5.02kg \r', 'bad-number'],
  ['\n 1G       1e+03kg \r', 'bad-number'],
  ['\n 1G    -  5.025kg \r', 'bad-number'],
  ['\n 1G       -----kg \r', 'bad-number'],
  ['\n 1G            kg \r', 'bad-number'],
  ['\nZ1G  ----------kg \r', 'bad-number'],
  ['\n 1G  ----------%  \r', 'unknown-unit'],
  ['\n 1G       5.025KG \r', 'unknown-unit'],
  ['\n 1G       5.025t  \r', 'unknown-unit'],
  ['\n 1G       5.025l/o\r', 'unknown-unit'],
  ['\n 1G       5.025   \r', 'unknown-unit'],
]);
