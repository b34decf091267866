/** A line of an ear-tag reader, less CR LF, and the 15-digit number or the reason it is refused. */
export interface WandFrame {
  readonly text: string;
  readonly source: 'printed, reader manual' | 'constructed from the line forms';
  readonly tag?: string;
  /** What stands beside the number, where the form tells any of it. */
  readonly marks?: {
    readonly animal?: boolean;
    readonly retag?: number;
    readonly userInfo?: number;
    readonly extraBlock?: boolean;
  };
  readonly why?: string;
}

const NO_MARKS = { animal: true, retag: 0, userInfo: 0, extraBlock: false } as const;

/** Reader lines. */
export const WAND_FRAMES: readonly WandFrame[] = [
  { text: '964000000123456', source: 'printed, reader manual', tag: '964000000123456' },
  { text: '964 000000123456', source: 'printed, reader manual', tag: '964000000123456' },
  {
    text: 'A0000000964000000123456',
    source: 'printed, reader manual',
    tag: '964000000123456',
    marks: NO_MARKS,
  },
  {
    text: '10000000964000000123456',
    source: 'printed, reader manual',
    tag: '964000000123456',
    marks: NO_MARKS,
  },
  {
    text: 'A 00000 0 964 000000123456',
    source: 'printed, reader manual',
    tag: '964000000123456',
    marks: NO_MARKS,
  },
  { text: 'A 00000 0 0999 000000123456', source: 'printed, reader manual', why: 'test-code' },
  {
    text: 'A 00000 0 0964 000000123456',
    source: 'constructed from the line forms',
    tag: '964000000123456',
    marks: NO_MARKS,
  },
  {
    text: 'LA 982 000001088420',
    source: 'printed, reader manual',
    tag: '982000001088420',
    marks: { animal: true },
  },
  {
    text: 'LA 982 000000255895',
    source: 'printed, reader manual',
    tag: '982000000255895',
    marks: { animal: true },
  },
  {
    text: 'LA 00000 0 982 000001088420',
    source: 'printed, reader manual',
    tag: '982000001088420',
    marks: NO_MARKS,
  },
  {
    text: '\x02LA 982 000001088420',
    source: 'constructed from the line forms',
    tag: '982000001088420',
    marks: { animal: true },
  },
  { text: '\x02964000000123456', source: 'constructed from the line forms', tag: '964000000123456' },
  // The animal bit is 0 on certified tags that carry it wrong.
  {
    text: '00000000964000000123456',
    source: 'constructed from the line forms',
    tag: '964000000123456',
    marks: { ...NO_MARKS, animal: false },
  },
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
  {
    text: 'A0000010964000000123456',
    source: 'constructed from the line forms',
    tag: '964000000123456',
    marks: { ...NO_MARKS, extraBlock: true },
  },
  { text: '', source: 'constructed from the line forms', why: 'unknown-line' },
  // 14339 = 7 x 2048 + 0 x 64 + 3: seven times tagged anew, no user information.
  {
    text: 'LA 14339 1 060 030207938416',
    source: 'constructed from the line forms',
    tag: '060030207938416',
    marks: { animal: true, retag: 7, userInfo: 0, extraBlock: true },
  },
  {
    text: 'LA 02048 0 982 000001088420',
    source: 'constructed from the line forms',
    tag: '982000001088420',
    marks: { ...NO_MARKS, retag: 1 },
  },
  {
    text: 'A0198400964000000123456',
    source: 'constructed from the line forms',
    tag: '964000000123456',
    marks: { ...NO_MARKS, userInfo: 31 },
  },
  {
    text: '964000000123456 3 05 001',
    source: 'constructed from the line forms',
    tag: '964000000123456',
    marks: { retag: 3, userInfo: 5 },
  },
  {
    text: '964 000000123456 0 31 000',
    source: 'constructed from the line forms',
    tag: '964000000123456',
    marks: { retag: 0, userInfo: 31 },
  },
  { text: '964000000123456 8 05 001', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: '964000000123456 3 32 001', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: 'LA 16384 0 982 000001088420', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: 'LA 00000 2 982 000001088420', source: 'constructed from the line forms', why: 'unknown-line' },
  { text: 'LA 999 000000001337', source: 'constructed from the line forms', why: 'test-code' },
  { text: 'LA 00000 0 000 000000001337', source: 'constructed from the line forms', why: 'no-country' },
];

/** A telegram of 128 bits as 32 digits of base 16, what it says, and its checksum. */
export interface TelegramVector {
  readonly source: 'published telegram' | 'published read, telegram computed' | 'computed';
  readonly hex: string;
  readonly codeBytes: string;
  readonly checksum: number;
  readonly tag: string;
  readonly animal: boolean;
  readonly reserved: number;
  readonly extraBlock: boolean;
  readonly extra: number;
}

const BARE = { reserved: 0, extraBlock: false, extra: 0 } as const;

/** Three vectors whose checksums or whole telegrams were published, and four computed from the rules they confirm. */
export const TELEGRAMS: readonly TelegramVector[] = [
  {
    source: 'published read, telegram computed',
    hex: '0021df188c43c1f0f043fa9738040203',
    codeBytes: '708f8808070f07f0',
    checksum: 0xce2b,
    tag: '060030207938416',
    animal: true,
    reserved: 14339,
    extraBlock: true,
    extra: 0x800000,
  },
  {
    ...BARE,
    source: 'published read, telegram computed',
    hex: '00339a080402079f80403b7598040201',
    codeBytes: '39050000c0f90000',
    checksum: 0x9adb,
    tag: '999000000001337',
    animal: false,
  },
  {
    ...BARE,
    source: 'published telegram',
    hex: '00339a080402079f8040797788040201',
    codeBytes: '39050000c0f90080',
    checksum: 0x1ed3,
    tag: '999000000001337',
    animal: true,
  },
  {
    ...BARE,
    source: 'computed',
    hex: '0024bd98440203af80407470e8040201',
    codeBytes: 'a49b100080f50080',
    checksum: 0x70c5,
    tag: '982000001088420',
    animal: true,
  },
  {
    ...BARE,
    source: 'computed',
    hex: '00253fabb4d2756f80406a11b8040201',
    codeBytes: '945f6e2c5cf60080',
    checksum: 0xd80a,
    tag: '985121004515220',
    animal: true,
  },
  {
    ...BARE,
    source: 'computed',
    hex: '00351d49a576014b80407f1838040201',
    codeBytes: '152b2cba00d20080',
    checksum: 0xc11f,
    tag: '840003123456789',
    animal: true,
  },
  {
    ...BARE,
    source: 'computed',
    hex: '003ffffffffff9a280406598c8040201',
    codeBytes: 'ffffffff3f450080',
    checksum: 0x3134,
    tag: '276274877906943',
    animal: true,
  },
];
