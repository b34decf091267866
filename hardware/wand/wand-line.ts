import { checkTag, splitReserved, type TagMarks, type TagRefusal } from '../../core/herd/tag.ts';

/** Why a line of the wand is no animal's number. */
export type WandRefusal =
  | TagRefusal
  /** A transponder that is made for things: a pallet, a gate, the reader's own test piece. */
  | 'industrial'
  /** A transponder that can be written over: its number proves nothing. */
  | 'rewritable'
  /** The wand itself says that it read badly. */
  | 'bad-read'
  /** No line form that is known. */
  | 'unknown-line';

/** A line of the wand: a checked 15-digit number and what stood beside it, or why there is none. */
export type WandLine =
  | { readonly kind: 'tag'; readonly tag: string; readonly marks: TagMarks }
  | { readonly kind: 'refused'; readonly why: WandRefusal; readonly text: string };

/**
 * The line forms of an animal's number, all with named groups.
 *
 * `prefix` is `A` for an animal's transponder or the animal bit itself; `reserved` five digits; `block` the flag of
 * further data; `retag` and `user` the two fields of `reserved` apart, as ISO 24631-6 orders them for display.
 */
const FORMS: readonly RegExp[] = [
  // 15 digits, or 3 and 12 with a blank between.
  /^(?<country>\d{3}) ?(?<national>\d{12})$/,
  // 23 characters without a blank, four of them the country.
  /^(?<prefix>[A01])(?<reserved>\d{5})(?<block>[01])0(?<country>\d{3})(?<national>\d{12})$/,
  // The same set apart by blanks, 26 characters, or 27 with 4 digits of country; `L` is line mode, short or full.
  /^L?(?<prefix>A) (?:(?<reserved>\d{5}) (?<block>[01]) )?0?(?<country>\d{3}) (?<national>\d{12})$/,
  // The number, retagging counter, user information and three digits more.
  /^(?<country>\d{3}) ?(?<national>\d{12}) (?<retag>[0-7]) (?<user>[0-2]?\d|3[01]) \d{3}$/,
];

const NOT_ANIMAL: readonly (readonly [RegExp, WandRefusal])[] = [
  [/^L?R ?\d{4} ?\d{16}$/, 'industrial'],
  [/^\d{4} \d{16}$/, 'industrial'],
  [/^L?W ?\d{4} ?\d{16}$/, 'rewritable'],
  [/^(?:LI|E)$/, 'bad-read'],
];

const STX = '\x02';

/**
 * Reads one line of an ear-tag wand, without its CR LF; a leading STX is dropped.
 *
 * The animal bit is told but not asked for, since certified tags are known to carry it wrong. The number is judged
 * by `checkTag`. Source: published manuals of readers (facts §2).
 */
export function readWandLine(line: string): WandLine {
  const text = line.startsWith(STX) ? line.slice(1) : line;
  const groups = formOf(text);
  const marks = groups === null ? null : marksOf(groups);
  if (groups === null || marks === null) {
    const why = NOT_ANIMAL.find(([form]) => form.test(text))?.[1] ?? 'unknown-line';
    return { kind: 'refused', why, text };
  }
  const checked = checkTag(`${groups['country']}${groups['national']}`);
  return checked.ok ? { kind: 'tag', tag: checked.tag, marks } : { kind: 'refused', why: checked.why, text };
}

type Groups = Readonly<Record<string, string | undefined>>;

function formOf(text: string): Groups | null {
  for (const form of FORMS) {
    const groups = form.exec(text)?.groups;
    if (groups !== undefined) return groups;
  }
  return null;
}

/** `null` where the reserved digits are more than 14 bits hold: then the line was garbled. */
function marksOf(groups: Groups): TagMarks | null {
  const { prefix, reserved, block, retag, user } = groups;
  const split = reserved === undefined ? undefined : splitReserved(Number(reserved));
  if (split === null) return null;
  return {
    animal: prefix === undefined ? null : prefix !== '0',
    retag: split?.retag ?? numberOr(retag),
    userInfo: split?.userInfo ?? numberOr(user),
    extraBlock: block === undefined ? null : block === '1',
  };
}

function numberOr(digits: string | undefined): number | null {
  return digits === undefined ? null : Number(digits);
}
