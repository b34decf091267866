import { broken, LB, PLAIN, type RefusedFrame, type WeightFrame } from './serial-frames.ts';

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
export const ST_GS_BROKEN: readonly RefusedFrame[] = broken([
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
]);
