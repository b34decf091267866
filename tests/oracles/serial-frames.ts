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

/** One frame on the wire and its meaning. */
export interface WeightFrame {
  readonly wire: string;
  readonly source: FrameSource;
  readonly reading: ExpectedReading;
}

/** One frame that is sound but carries no weight, or is broken, and the name of the reason. */
export interface RefusedFrame {
  readonly wire: string;
  readonly source: FrameSource;
  readonly fault: string;
}

const LB = 453.59237;
const PLAIN = { moving: false, net: false, zero: false } as const;

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
export const SMA_BROKEN: readonly RefusedFrame[] = [
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
].map(([wire = '', fault = '']) => ({ wire, fault, source: 'constructed from the field table' }));

/** Continuous lines of three words and a weight. */
export const ST_GS_FRAMES: readonly WeightFrame[] = [
  {
    wire: 'ST,GS,+  1.240kg\r\n',
    source: 'printed form, public note',
    reading: { ...PLAIN, grams: 1240, division: 1 },
  },
  {
    wire: 'US,GS,+  0.860kg\r\n',
    source: 'printed form, public note',
    reading: { ...PLAIN, moving: true, grams: 860, division: 1 },
  },
  {
    wire: 'ST,GS,+000.500kg\r\n',
    source: 'printed form, public note',
    reading: { ...PLAIN, grams: 500, division: 1 },
  },
  {
    wire: 'ST,GS,+      0.00     g\r\n',
    source: 'printed form, public note',
    reading: { ...PLAIN, grams: 0, division: 0.01 },
  },
  {
    wire: 'ST,GS,+000000.kg\r\n',
    source: 'printed form, public note',
    reading: { ...PLAIN, grams: 0, division: 1000 },
  },
  {
    wire: 'ST,US,+   0.05kg\r\n',
    source: 'printed form, device note',
    reading: { ...PLAIN, moving: true, grams: 50, division: 10 },
  },
  {
    wire: 'ST,GS,+0012.34kg\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 12340, division: 10 },
  },
  {
    wire: 'US,GS,+0012.41kg\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, moving: true, grams: 12410, division: 10 },
  },
  {
    wire: 'ST,NT,-0001.20kg\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, net: true, grams: -1200, division: 10 },
  },
  {
    wire: 'OL,GS,+0000.00kg\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 10, fault: 'over' },
  },
  {
    wire: 'OL,GS,-0000.00kg\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 10, fault: 'under' },
  },
  {
    wire: 'OL,GS,+-------kg\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'over' },
  },
  {
    wire: 'ST,GS,-0000.00kg\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 10 },
  },
  {
    wire: 'ST,GS   12.34,kg\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 12340, division: 10 },
  },
  {
    wire: 'US,NT-  01.20,lb\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, moving: true, net: true, grams: -1.2 * LB, division: 0.01 * LB },
  },
  {
    wire: 'ST,GS     500, g\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 500, division: 1 },
  },
];

/** Continuous lines broken on purpose, one rule each, and lines of kindred formats that must not pass as these. */
export const ST_GS_BROKEN: readonly RefusedFrame[] = [
  ['\r\n', 'bad-header'],
  ['ST,GS\r\n', 'bad-header'],
  ['GS,ST,+0012.34kg\r\n', 'bad-header'],
  ['ST,XX,+0012.34kg\r\n', 'bad-header'],
  ['st,gs,+0012.34kg\r\n', 'bad-header'],
  ['T,GS,+0012.34kg\r\n', 'bad-header'],
  ['ST,GS,0012.34kg\r\n', 'bad-header'],
  ['ST,GS+0012.34kg\r\n', 'bad-header'],
  ['ST,+001234.5  g\r\n', 'bad-header'],
  ['US,-00183.96  g\r\n', 'bad-header'],
  ['OL,+999999E+19\r\n', 'bad-header'],
  ['ww00015.000kg\r\n', 'bad-header'],
  ['S S     100.00 g\r\n', 'bad-header'],
  ['ST,GS,+00 2.34kg\r\n', 'bad-number'],
  ['ST,GS,+0012.3.kg\r\n', 'bad-number'],
  ['ST,GS,+--12.34kg\r\n', 'bad-number'],
  ['ST,GS,++012.34kg\r\n', 'bad-number'],
  ['ST,GS,+0012,34kg\r\n', 'bad-number'],
  ['ST,GS,+  12E02kg\r\n', 'bad-number'],
  ['ST,GS,+    .05kg\r\n', 'bad-number'],
  ['ST,GS,+       kg\r\n', 'bad-number'],
  ['ST,GS,+-------kg\r\n', 'bad-number'],
  ['ST,GS,+0000000000012kg\r\n', 'bad-number'],
  ['ST,GS,+0.1kg\r\n', 'bad-width'],
  ['ST,GS,+             0012.34kg\r\n', 'bad-width'],
  ['ST,GS   12.34kg\r\n', 'bad-number'],
  ['ST,GS  12.34,kg\r\n', 'bad-number'],
  ['ST,GS  12.34 ,kg\r\n', 'bad-number'],
  ['ST,GS,+0012.34\r\n', 'unknown-unit'],
  ['ST,GS,+0012.34KG\r\n', 'unknown-unit'],
  ['ST,GS,+0012.34t\r\n', 'unknown-unit'],
  ['ST,GS,+0012.34PC\r\n', 'unknown-unit'],
  ['ST,GS,+0012.34%\r\n', 'unknown-unit'],
  ['ST,GS,+0012.34k\r\n', 'unknown-unit'],
  ['ST,GS   12.34, t\r\n', 'unknown-unit'],
].map(([wire = '', fault = '']) => ({ wire, fault, source: 'constructed from the field table' }));

/** A line of an ear-tag reader, less CR LF, and the 15-digit number or the reason it is refused. */
export interface WandFrame {
  readonly text: string;
  readonly source: 'printed, reader manual' | 'constructed from the line forms';
  readonly tag?: string;
  readonly why?: string;
}

/** Reader lines. */
export const WAND_FRAMES: readonly WandFrame[] = [
  { text: '964000000123456', source: 'printed, reader manual', tag: '964000000123456' },
  { text: '964 000000123456', source: 'printed, reader manual', tag: '964000000123456' },
  { text: 'A0000000964000000123456', source: 'printed, reader manual', tag: '964000000123456' },
  { text: '10000000964000000123456', source: 'printed, reader manual', tag: '964000000123456' },
  { text: 'A 00000 0 964 000000123456', source: 'printed, reader manual', tag: '964000000123456' },
  { text: 'A 00000 0 0999 000000123456', source: 'printed, reader manual', why: 'test-code' },
  { text: 'A 00000 0 0964 000000123456', source: 'constructed from the line forms', tag: '964000000123456' },
  { text: 'LA 982 000001088420', source: 'printed, reader manual', tag: '982000001088420' },
  { text: 'LA 982 000000255895', source: 'printed, reader manual', tag: '982000000255895' },
  { text: 'LA 00000 0 982 000001088420', source: 'printed, reader manual', tag: '982000001088420' },
  { text: '\x02LA 982 000001088420', source: 'constructed from the line forms', tag: '982000001088420' },
  { text: '\x02964000000123456', source: 'constructed from the line forms', tag: '964000000123456' },
  // The animal bit is 0 on certified tags that carry it wrong.
  { text: '00000000964000000123456', source: 'constructed from the line forms', tag: '964000000123456' },
  { text: '276274877906943', source: 'constructed from the line forms', tag: '276274877906943' },
  { text: '276274877906944', source: 'constructed from the line forms', why: 'number-too-large' },
  { text: '000000000123456', source: 'constructed from the line forms', why: 'no-country' },
  { text: 'LR 0006 0000000018514348', source: 'printed, reader manual', why: 'industrial' },
  { text: 'R 0006 0000000000123456', source: 'printed, reader manual', why: 'industrial' },
  { text: 'R00060000000000123456', source: 'printed, reader manual', why: 'industrial' },
  { text: '0006 0000000000123456', source: 'printed, reader manual', why: 'industrial' },
  { text: 'LR 4095 4503599627370495', source: 'printed, reader manual', why: 'industrial' },
  { text: 'R 4095 4503599627370495', source: 'printed, reader manual', why: 'industrial' },
  { text: 'LW 2095 3453577809046784', source: 'printed, reader manual', why: 'rewritable' },
  { text: 'W 2095 3453577809046784', source: 'constructed from the line forms', why: 'rewritable' },
  { text: 'LI', source: 'printed, reader manual', why: 'bad-read' },
  { text: 'E', source: 'printed, reader manual', why: 'bad-read' },
  { text: '96400000012345', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: '9640000001234567', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: '964-000000123456', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: 'A1000000964000000123456x', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: 'LA 982 00000108842O', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: '1000000 964000000123456', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: 'A0000001964000000123456', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: 'A0000010964000000123456', source: 'constructed from the line forms', tag: '964000000123456' },
  { text: '', source: 'constructed from the line forms', why: 'unknown-line' },
];
