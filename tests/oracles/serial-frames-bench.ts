import { broken, LB, PLAIN, type RefusedFrame, type WeightFrame } from './serial-frames.ts';

/** Lines of 17 bytes with a header and a comma, read for the bench. */
export const HEADER_COMMA_FRAMES: readonly WeightFrame[] = [
  {
    wire: 'ST,+001234.5  g\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 1234.5, division: 0.1 },
  },
  {
    wire: 'US,-00183.96  g\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, moving: true, grams: -183.96, division: 0.01 },
  },
  {
    wire: 'OL,+999999.9  g\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 0, division: 0.1, fault: 'over' },
  },
  {
    wire: 'OL,+999999E+19\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'over' },
  },
  {
    wire: 'OL,-999999E+19\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'under' },
  },
  {
    wire: 'ST,+00012.34 kg\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 12340, division: 10 },
  },
  {
    wire: 'ST,+00012.34 lb\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 12.34 * LB, division: 0.01 * LB },
  },
];

/** Lines with a header that carry no weight, or are broken. */
export const HEADER_COMMA_BROKEN: readonly RefusedFrame[] = broken([
  ['QT,+00012345 PC\r\n', 'not-a-weight'],
  ['ST,+000123.4  %\r\n', 'unknown-unit'],
  ['OL,-99999999 PC\r\n', 'unknown-unit'],
  ['ST,+01234.5  g\r\n', 'bad-width'],
  ['ST,+0001234.5  g\r\n', 'bad-width'],
  ['OL,+99999E+19\r\n', 'bad-width'],
  ['ST+,001234.5  g\r\n', 'bad-header'],
  ['XX,+001234.5  g\r\n', 'bad-header'],
  ['ST, 001234.5  g\r\n', 'bad-header'],
  ['ST,+  1234.5  g\r\n', 'bad-number'],
  ['ST,+0012.4.5  g\r\n', 'bad-number'],
  ['ST,+001234.5  G\r\n', 'unknown-unit'],
  ['ST,+001234.5g  \r\n', 'unknown-unit'],
]);

/** Lines of a weight, its unit and a question mark in motion. */
export const VALUE_UNIT_FRAMES: readonly WeightFrame[] = [
  {
    wire: '     192.21 g\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 192.21, division: 0.01 },
  },
  {
    wire: '       0.01 g ?\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, moving: true, grams: 0.01, division: 0.01 },
  },
  {
    wire: '  0.5950 oz   ?\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, moving: true, grams: (0.595 * LB) / 16, division: (0.0001 * LB) / 16 },
  },
  {
    wire: '      -1.25 kg  \r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: -1250, division: 10 },
  },
];

/** Such lines broken on purpose. */
export const VALUE_UNIT_BROKEN: readonly RefusedFrame[] = broken([
  ['\r\n', 'bad-header'],
  ['     192.21g\r\n', 'bad-header'],
  ['     192.21 g N\r\n', 'bad-header'],
  ['     192,21 g\r\n', 'bad-header'],
  ['    +192.21 g\r\n', 'bad-header'],
  ['     192.21 g ??\r\n', 'bad-header'],
  ['----------- g\r\n', 'bad-header'],
  ['    1.92.21 g\r\n', 'bad-number'],
  ['     192.21 G\r\n', 'unknown-unit'],
  ['     192.21 ct\r\n', 'unknown-unit'],
  ['   0.01 g ?\r\n', 'bad-width'],
  ['       192.21 g\r\n', 'bad-width'],
]);

/** Lines with the command echoed and a stability mark, in both printed widths. */
export const STABILITY_LINE_FRAMES: readonly WeightFrame[] = [
  {
    wire: 'SUI? -   58.237 kg \r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, moving: true, grams: -58237, division: 1 },
  },
  {
    wire: 'SI ?       18.5 kg \r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, moving: true, grams: 18500, division: 100 },
  },
  {
    wire: 'S    -      8.5 g  \r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: -8.5, division: 0.1 },
  },
  {
    wire: 'SI        12.34 g  \r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 12.34, division: 0.01 },
  },
  {
    wire: 'SI         12.34 g  \r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 12.34, division: 0.01 },
  },
  {
    wire: 'SI  ^      12.34 g  \r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 0.01, fault: 'over' },
  },
  {
    wire: 'SI  v -    12.34 g  \r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 0.01, fault: 'under' },
  },
  {
    wire: 'SI_^\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'over' },
  },
  {
    wire: 'SI v\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'under' },
  },
  {
    wire: 'S E\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, moving: true, grams: 0, division: 1, fault: 'unstable-timeout' },
  },
];

/** Such lines that carry no weight, or are broken. */
export const STABILITY_LINE_BROKEN: readonly RefusedFrame[] = broken([
  ['S A\r\n', 'not-a-weight'],
  ['Z D\r\n', 'not-a-weight'],
  ['SI_I\r\n', 'command-refused'],
  ['ES\r\n', 'command-refused'],
  ['\r\n', 'bad-width'],
  ['SI ?      12.34 g \r\n', 'bad-width'],
  ['SI  ?       12.34 g  \r\n', 'bad-width'],
  ['SI  x      12.34 g  \r\n', 'bad-header'],
  ['SI  ? +    12.34 g  \r\n', 'bad-header'],
  ['si  ?      12.34 g  \r\n', 'bad-header'],
  ['QSI ?      12.34 g  \r\n', 'bad-header'],
  ['SI  ?     12.34  g  \r\n', 'bad-number'],
  ['SI  ?      12,34 g  \r\n', 'bad-number'],
  ['SI  ?            g  \r\n', 'bad-number'],
  ['SI  ?      12.34 ct \r\n', 'unknown-unit'],
  ['SI  ?      12.34    \r\n', 'unknown-unit'],
]);

/** Lines of 16 bytes whose unit is blank in motion. */
export const BLANK_UNIT_FRAMES: readonly WeightFrame[] = [
  {
    wire: '+   1255.7 g  \r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 1255.7, division: 0.1 },
  },
  {
    wire: '+   1255.7    \r\n',
    source: 'constructed from the field table',
    settings: { unit: 'g' },
    reading: { ...PLAIN, moving: true, grams: 1255.7, division: 0.1 },
  },
  {
    wire: '-    12.34 kg \r\n',
    source: 'constructed from the field table',
    settings: { unit: 'kg' },
    reading: { ...PLAIN, grams: -12340, division: 10 },
  },
  {
    wire: '     12.34 kg \r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 12340, division: 10 },
  },
  {
    wire: '      H       \r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'over' },
  },
  {
    wire: '      L       \r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'under' },
  },
  {
    wire: '      C       \r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'not-displayed' },
  },
  {
    wire: 'Err 054       \r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'not-displayed' },
  },
];

/** Such lines broken on purpose, and what no setting, or another one, makes of good ones. */
export const BLANK_UNIT_BROKEN: readonly RefusedFrame[] = broken([
  ['+   1255.7    \r\n', 'unit-not-set'],
  ['+   1255.7 g  \r\n', 'unit-mismatch', { unit: 'kg' }],
  ['+  1255.7 g  \r\n', 'bad-width'],
  ['+    1255.7 g  \r\n', 'bad-width'],
  ['*   1255.7 g  \r\n', 'bad-header'],
  ['+1  1255.7 g  \r\n', 'bad-header'],
  ['+   125[7] g  \r\n', 'bad-number'],
  ['+  1255.7  g  \r\n', 'bad-number'],
  ['+   1255.7 pcs\r\n', 'unknown-unit'],
  ['+   1255.7  g \r\n', 'unknown-unit'],
]);

/** Replies of the command set around S. */
export const COMMAND_SET_FRAMES: readonly WeightFrame[] = [
  {
    wire: 'S S     100.00 g\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 100, division: 0.01 },
  },
  {
    wire: 'S D     129.07 g\r\n',
    source: 'printed, public note',
    reading: { ...PLAIN, moving: true, grams: 129.07, division: 0.01 },
  },
  {
    wire: 'S S    -100.00 g\r\n',
    source: 'printed, public note',
    reading: { ...PLAIN, grams: -100, division: 0.01 },
  },
  {
    wire: 'S D       0.03 kg\r\n',
    source: 'constructed from the field table',
    reading: { ...PLAIN, moving: true, grams: 30, division: 10 },
  },
  {
    wire: 'S I\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'not-displayed' },
  },
  {
    wire: 'S +\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'over' },
  },
  {
    wire: 'S -\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'under' },
  },
  {
    wire: 'SI+\r\n',
    source: 'printed, indicator manual',
    reading: { ...PLAIN, grams: 0, division: 1, fault: 'over' },
  },
];

/** Such replies that carry no weight, or are broken. */
export const COMMAND_SET_BROKEN: readonly RefusedFrame[] = broken([
  ['ES\r\n', 'command-refused'],
  ['EL\r\n', 'command-refused'],
  ['ET\r\n', 'command-garbled'],
  ['Z A\r\n', 'not-a-weight'],
  ['Z I\r\n', 'command-refused'],
  ['T +\r\n', 'command-refused'],
  ['I4 A "1234"\r\n', 'not-a-weight'],
  ['S S    100.00 g\r\n', 'bad-width'],
  ['S S    100.00 kg\r\n', 'bad-width'],
  ['S S      100.00 g\r\n', 'bad-width'],
  ['S S     100.00g\r\n', 'bad-width'],
  ['S S     100,00 g\r\n', 'bad-number'],
  ['S S     1 0.00 g\r\n', 'bad-number'],
  ['S S     100.00 pcs\r\n', 'unknown-unit'],
  ['S X     100.00 g\r\n', 'not-a-weight'],
  ['s s     100.00 g\r\n', 'bad-header'],
  ['     100.00 g\r\n', 'bad-header'],
]);

/** The tare told on request. */
export const COMMAND_SET_TARE = {
  wire: 'TA A      23.45 g\r\n',
  source: 'constructed from the field table',
  grams: 23.45,
} as const;
