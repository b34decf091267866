import {
  broken,
  type ExpectedReading,
  type FrameSettings,
  LB,
  PLAIN,
  type RefusedFrame,
  type WeightFrame,
} from './serial-frames.ts';

/** Frames made from the published field tables, all read with the same settings. */
function constructed(
  list: readonly (readonly [string, ExpectedReading])[],
  settings?: FrameSettings,
): readonly WeightFrame[] {
  return list.map(([wire, reading]) => ({
    wire,
    reading,
    source: 'constructed from the field table',
    ...(settings !== undefined && { settings }),
  }));
}

const KG: FrameSettings = { unit: 'kg' };
const KG_100 = { ...PLAIN, grams: 12340, division: 10 };

/** Replies of a weight and status bytes in all three printed layouts, where a one means motion, read for the bench. */
export const WEIGHT_STATUS_FRAMES = constructed([
  ['\n0012.34lb\r\n00\r\x03', { ...PLAIN, grams: 12.34 * LB, division: 0.01 * LB }],
  ['\n0012.34lb\r\n10\r\x03', { ...PLAIN, moving: true, grams: 12.34 * LB, division: 0.01 * LB }],
  ['\n0000.00lb\r\n20\r\x03', { ...PLAIN, zero: true, grams: 0, division: 0.01 * LB }],
  ['\n^^^^^^lb\r\n02\r\x03', { ...PLAIN, grams: 0, division: 1, fault: 'over' }],
  ['\n______lb\r\n01\r\x03', { ...PLAIN, grams: 0, division: 1, fault: 'under' }],
  ['\n------lb\r\n00\r\x03', { ...PLAIN, grams: 0, division: 1, fault: 'zero-error' }],
  ['\n12.340LB\r\nS00\r\x03', { ...PLAIN, grams: 12.34 * LB, division: 0.001 * LB }],
  ['\nS10\r\x03', { ...PLAIN, moving: true, grams: 0, division: 1, fault: 'not-displayed' }],
  ['\nS01\r\x03', { ...PLAIN, grams: 0, division: 1, fault: 'under' }],
  ['\nS02\r\x03', { ...PLAIN, grams: 0, division: 1, fault: 'over' }],
  ['\n12.340LB\r\nS0p4\r\x03', { ...PLAIN, net: true, grams: 12.34 * LB, division: 0.001 * LB }],
  ['\n12.340LB\r\nS0p0\r\x03', { ...PLAIN, grams: 12.34 * LB, division: 0.001 * LB }],
  ['\n1LB 12.5OZ\r\nS00\r\x03', { ...PLAIN, grams: (28.5 * LB) / 16, division: (0.1 * LB) / 16 }],
  ['\n 012.34KG\r00\x03', KG_100],
  ['\n-012.34KG\r10\x03', { ...PLAIN, moving: true, grams: -12340, division: 10 }],
  ['\n0012.34kg\r\n40\r\x03', { ...PLAIN, grams: 0, division: 10, fault: 'not-displayed' }],
  ['\n0012.34kg\r\n08\r\x03', { ...PLAIN, grams: 0, division: 10, fault: 'not-displayed' }],
  ['\n0012.34kg\r\n0p8\r\x03', { ...PLAIN, grams: 0, division: 10, fault: 'zero-error' }],
]);

/** The same bytes where a zero means motion and standing at zero: the one manual that prints it so. */
export const WEIGHT_STATUS_INVERSE_FRAMES = constructed([
  ['\n 012.34KG\r30\x03', KG_100],
  ['\n 012.34KG\r20\x03', { ...KG_100, moving: true }],
  ['\n 000.00KG\r10\x03', { ...PLAIN, zero: true, grams: 0, division: 10 }],
  ['\n 012.34KG\r32\x03', { ...KG_100, grams: 0, fault: 'over' }],
]);

/** Such replies that carry no weight, or are broken. The first is the printed reply to the command for status. */
export const WEIGHT_STATUS_BROKEN: readonly RefusedFrame[] = [
  { wire: '\nS20\r\x03', source: 'printed, indicator manual', fault: 'not-a-weight' },
  ...broken([
    ['\n?\r\x03', 'command-refused'],
    ['\n20\r\x03', 'not-a-weight'],
    ['\nS00\r\x03', 'not-a-weight'],
    ['\n0012.34lb\r\n0\r\x03', 'bad-header'],
    ['\n0012.34lb\r\n0p\r\x03', 'bad-header'],
    ['\n0012.34lb\r\n004\r\x03', 'bad-header'],
    ['\n0012.34lb\r\n0pp\r\x03', 'bad-header'],
    ['\n0012.34lb\r\nX00\r\x03', 'bad-header'],
    ['\n0012.34lb\r\nA0\r\x03', 'bad-header'],
    ['\n00 2.34lb\r\n00\r\x03', 'bad-number'],
    ['\n0012,34lb\r\n00\r\x03', 'bad-number'],
    ['\n0012.34\r\n00\r\x03', 'bad-number'],
    ['\n1LB 16.0OZ\r\nS00\r\x03', 'bad-number'],
    ['\n0012.34Lb\r\n00\r\x03', 'unknown-unit'],
    ['\n0012.34ct\r\n00\r\x03', 'unknown-unit'],
  ]),
];

/** Replies of a bare weight between STX and CR. */
export const STX_WEIGHT_FRAMES = constructed(
  [
    ['\x02012.34\r', KG_100],
    ['\x02?a\r', { ...PLAIN, moving: true, grams: 0, division: 1, fault: 'not-displayed' }],
    ['\x02?b\r', { ...PLAIN, grams: 0, division: 1, fault: 'over' }],
    ['\x02?d\r', { ...PLAIN, grams: 0, division: 1, fault: 'under' }],
    ['\x02?h\r', { ...PLAIN, grams: 0, division: 1, fault: 'zero-error' }],
    ['\x02?p\r', { ...PLAIN, zero: true, grams: 0, division: 1, fault: 'not-displayed' }],
  ],
  KG,
);

/** Such replies broken on purpose. */
export const STX_WEIGHT_BROKEN: readonly RefusedFrame[] = broken([
  ['\x02012.34\r', 'unit-not-set'],
  ['\x02012,34\r', 'bad-number', KG],
  ['\x0201.2.34\r', 'bad-number', KG],
  ['\x02012.34kg\r', 'bad-number', KG],
  ['\x02\r', 'bad-number', KG],
  ['\x02.34\r', 'bad-width', KG],
  ['\x02?A\r', 'bad-header', KG],
  ['\x02?ab\r', 'bad-header', KG],
]);

/** Frames of sign, weight and one letter between STX and ETX. */
export const STX_ETX_SHORT_FRAMES = constructed(
  [
    ['\x02   12.34G\x03', KG_100],
    ['\x02-  01.20M\x03', { ...PLAIN, moving: true, grams: -1200, division: 10 }],
    ['\x02   12.34N\x03', { ...KG_100, net: true }],
    ['\x02  150.00O\x03', { ...KG_100, grams: 0, fault: 'over' }],
    ['\x02-   5.00U\x03', { ...KG_100, grams: 0, fault: 'under' }],
    ['\x02 -------E\x03', { ...PLAIN, grams: 0, division: 1, fault: 'not-displayed' }],
  ],
  KG,
);

/** Such frames broken on purpose. */
export const STX_ETX_SHORT_BROKEN: readonly RefusedFrame[] = broken([
  ['\x02   12.34G\x03', 'unit-not-set'],
  ['\x02  12.34G\x03', 'bad-width', KG],
  ['\x02    12.34G\x03', 'bad-width', KG],
  ['\x02   12.34X\x03', 'bad-header', KG],
  ['\x02+  12.34G\x03', 'bad-header', KG],
  ['\x02  1 2.34G\x03', 'bad-number', KG],
  ['\x02  12.34 G\x03', 'bad-number', KG],
]);

/** Frames of sign, weight, four marks and the unit between STX and ETX. */
export const STX_ETX_LONG_FRAMES = [
  ...constructed([
    ['\x02   12.34G  -kg \x03', KG_100],
    ['\x02-  01.20N  -lb \x03', { ...PLAIN, net: true, grams: -1.2 * LB, division: 0.01 * LB }],
    ['\x02    0.00G Z-kg \x03', { ...PLAIN, zero: true, grams: 0, division: 10 }],
    ['\x02  150.00O  -kg \x03', { ...KG_100, grams: 0, fault: 'over' }],
    ['\x02-   5.00UM -   \x03', { ...PLAIN, moving: true, grams: 0, division: 1, fault: 'under' }],
  ]),
  ...constructed([['\x02   12.34GM -   \x03', { ...KG_100, moving: true }]], KG),
];

/** Such frames broken on purpose, and what no setting, or another one, makes of good ones. */
export const STX_ETX_LONG_BROKEN: readonly RefusedFrame[] = broken([
  ['\x02   12.34GM -   \x03', 'unit-not-set'],
  ['\x02   12.34G  -kg \x03', 'unit-mismatch', { unit: 'lb' }],
  ['\x02   12.34G  -   \x03', 'unknown-unit', KG],
  ['\x02   12.34G  -t  \x03', 'unknown-unit'],
  ['\x02   12.34G  -kg\x03', 'bad-width'],
  ['\x02   12.34M  -kg \x03', 'bad-header'],
  ['\x02   12.34GX -kg \x03', 'bad-header'],
  ['\x02   12.34G   kg \x03', 'bad-header'],
  ['\x02  12.34 G  -kg \x03', 'bad-number'],
]);

function hex(text: string): string {
  return Buffer.from(text.replaceAll(' ', ''), 'hex').toString('latin1');
}

/** Continuous frames with status words; their checksums were computed from the published rule. */
export const STATUS_WORDS_FRAMES: readonly WeightFrame[] = [
  ...constructed(
    [
      [
        hex('02 2c 30 20 30 31 32 33 34 35 30 30 30 30 30 30 0d 26'),
        { ...PLAIN, grams: 123450, division: 10 },
      ],
      [
        hex('02 2c 38 20 30 31 32 33 34 35 30 30 30 30 30 30 0d 1e'),
        { ...PLAIN, moving: true, grams: 123450, division: 10 },
      ],
      [
        hex('02 2c 32 20 30 30 30 31 32 30 30 30 30 30 30 30 0d 30'),
        { ...PLAIN, grams: -1200, division: 10 },
      ],
      [
        hex('02 2c 31 20 30 31 30 30 30 30 30 30 32 33 34 35 0d 25'),
        { ...PLAIN, net: true, grams: 100000, division: 10 },
      ],
      [
        hex('02 2c 34 20 39 39 39 39 39 39 30 30 30 30 30 30 0d 7b'),
        { ...PLAIN, grams: 0, division: 10, fault: 'over' },
      ],
    ],
    KG,
  ),
  ...constructed(
    [
      [
        hex('02 3b 20 20 30 30 32 35 30 35 30 30 30 30 30 30 0d 2a'),
        { ...PLAIN, grams: 250.5 * LB, division: 0.5 * LB },
      ],
    ],
    { unit: 'lb' },
  ),
];

/** A frame with its checksum made right, so that only the rule under test is broken. */
function summed(text: string): string {
  const sum = [...text].reduce((total, character) => total + (character.charCodeAt(0) & 0x7f), 0);
  return text + String.fromCharCode(-sum & 0x7f);
}

/** Such frames whose checksum is right and something else is not. */
export const STATUS_WORDS_BROKEN: readonly RefusedFrame[] = broken([
  [summed('\x02,0 012345000000\r'), 'unit-not-set'],
  // Bit 4 of the second word says kilograms in one manual and nothing in the other: neither way are these pounds.
  [summed('\x02,0 012345000000\r'), 'unit-mismatch', { unit: 'lb' }],
  [summed('\x02,0 012345000000\r'), 'unit-mismatch', { unit: 'g' }],
  [summed('\x02,  012345000000\r'), 'unit-mismatch', KG],
  [summed('\x02,0!012345000000\r'), 'unit-mismatch', KG],
  [summed('\x02,0"012345000000\r'), 'unknown-unit', KG],
  [summed('\x02,0 01 345000000\r'), 'bad-number', KG],
  [summed('\x02,0  12345000000\r'), 'bad-number', KG],
  [summed('\x02$0 012345000000\r'), 'bad-header', KG],
  [summed('\x02)0 012345000000\r'), 'bad-header', KG],
  [summed('\x02l0 012345000000\r'), 'bad-header', KG],
  [summed('\x02,00012345000000\r'), 'bad-header', KG],
]);
