import { checkTag, type TagRefusal } from '../../core/herd/tag.ts';

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

/** A line of the wand: a checked 15-digit number, or why there is none. */
export type WandLine =
  | { readonly kind: 'tag'; readonly tag: string }
  | { readonly kind: 'refused'; readonly why: WandRefusal; readonly text: string };

/** 15 digits, or 3 and 12 with a blank between. */
const PLAIN = /^(\d{3}) ?(\d{12})$/;
/** 23 characters: `A` or the animal bit, 5 reserved, 1 flag, 4 of country, 12 of number. */
const LONG = /^[A01]\d{6}0(\d{3})(\d{12})$/;
/** The same set apart by blanks (26, or 27 with 4 digits of country), and line mode `LA`, short or full. */
const SPACED = /^L?A (?:\d{5} \d )?0?(\d{3}) (\d{12})$/;

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
 * The animal bit is not asked for, since certified tags are known to carry it wrong. The number is judged by
 * `checkTag`. Source: published manuals of readers (facts §2).
 */
export function readWandLine(line: string): WandLine {
  const text = line.startsWith(STX) ? line.slice(1) : line;
  const match = PLAIN.exec(text) ?? LONG.exec(text) ?? SPACED.exec(text);
  if (match === null) {
    const why = NOT_ANIMAL.find(([form]) => form.test(text))?.[1] ?? 'unknown-line';
    return { kind: 'refused', why, text };
  }
  const checked = checkTag(`${match[1]}${match[2]}`);
  return checked.ok ? { kind: 'tag', tag: checked.tag } : { kind: 'refused', why: checked.why, text };
}
