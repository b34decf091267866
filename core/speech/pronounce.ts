/** Pronunciations of a word in ARPABET, each phones between spaces; empty where the dictionary has none. */
export type Dictionary = (word: string) => readonly string[];

/** Longest spelling first; the first that fits is taken. */
const SPELLINGS: readonly (readonly [string, string])[] = [
  ['tch', 'CH'],
  ['igh', 'AY'],
  ['eigh', 'EY'],
  ['augh', 'AO'],
  ['ough', 'AO'],
  ['sch', 'SH'],
  ['ch', 'CH'],
  ['sh', 'SH'],
  ['th', 'TH'],
  ['ph', 'F'],
  ['wh', 'W'],
  ['ck', 'K'],
  ['qu', 'K W'],
  ['ng', 'NG'],
  ['ee', 'IY'],
  ['ea', 'IY'],
  ['oo', 'UW'],
  ['ou', 'AW'],
  ['ow', 'OW'],
  ['oy', 'OY'],
  ['oi', 'OY'],
  ['ai', 'EY'],
  ['ay', 'EY'],
  ['au', 'AO'],
  ['aw', 'AO'],
  ['ie', 'IY'],
  ['ei', 'AY'],
  ['ey', 'IY'],
  ['ar', 'AA R'],
  ['er', 'ER'],
  ['ir', 'ER'],
  ['ur', 'ER'],
  ['or', 'AO R'],
  ['x', 'K S'],
];

const SINGLE: Readonly<Record<string, string>> = {
  a: 'AE',
  b: 'B',
  c: 'K',
  d: 'D',
  e: 'EH',
  f: 'F',
  g: 'G',
  h: 'HH',
  i: 'IH',
  j: 'JH',
  k: 'K',
  l: 'L',
  m: 'M',
  n: 'N',
  o: 'AA',
  p: 'P',
  q: 'K',
  r: 'R',
  s: 'S',
  t: 'T',
  u: 'AH',
  v: 'V',
  w: 'W',
  y: 'Y',
  z: 'Z',
};

const LONG: Readonly<Record<string, string>> = { a: 'EY', e: 'IY', i: 'AY', o: 'OW', u: 'UW' };

/**
 * A pronunciation by spelling alone, for a name no dictionary holds; `null` where it is not spelt in plain letters.
 *
 * A rule this small is wrong for many names: whoever uses it must say which names it guessed.
 */
export function guessPronunciation(word: string): string | null {
  if (!/^[a-z]{2,24}$/.test(word)) return null;
  const phones: string[] = [];
  let at = 0;
  while (at < word.length) {
    const rest = word.slice(at);
    const [spelling, sound] = longVowel(rest) ?? lastLetters(rest, at) ?? spelt(rest);
    at += spelling.length;
    if (sound !== '' && sound !== phones.at(-1)) phones.push(sound);
  }
  return phones.join(' ');
}

/** A vowel, one consonant and a silent e at the end of the word: the vowel is said as its name. */
function longVowel(rest: string): readonly [string, string] | null {
  const found = /^([aeiou])([bcdfgklmnpstvz])e$/.exec(rest);
  if (found === null) return null;
  const [, vowel = '', consonant = ''] = found;
  return [rest, `${LONG[vowel]} ${consonant === 'c' ? 'S' : SINGLE[consonant]}`];
}

function lastLetters(rest: string, at: number): readonly [string, string] | null {
  if (at === 0) return null;
  if (rest === 'y' || rest === 'ie' || rest === 'i') return [rest, 'IY'];
  if (rest === 'a') return [rest, 'AH'];
  if (rest === 'o') return [rest, 'OW'];
  if (rest === 'e') return [rest, ''];
  if (rest === 'le') return [rest, 'AH L'];
  return null;
}

function spelt(rest: string): readonly [string, string] {
  const found = SPELLINGS.find(([spelling]) => rest.startsWith(spelling));
  if (found !== undefined) return found;
  const letter = rest.slice(0, 1);
  if (letter === 'c' && /^c[eiy]/.test(rest)) return ['c', 'S'];
  return [letter, SINGLE[letter] ?? ''];
}
