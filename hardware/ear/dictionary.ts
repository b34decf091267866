import { readFileSync } from 'node:fs';
import type { Dictionary } from '../../core/speech/pronounce.ts';

/** Where Debian's `pocketsphinx-en-us` keeps the model of how English sounds. */
export const MODEL_FOLDER = '/usr/share/pocketsphinx/model/en-us';

/**
 * The pronouncing dictionary of the model, looked up in the file as it lies: a table of its 134,000 lines would
 * weigh ten times as much. Throws where the file is missing.
 */
export function openDictionary(path = `${MODEL_FOLDER}/cmudict-en-us.dict`): Dictionary {
  const file = Buffer.concat([readFileSync(path), Buffer.from('\n')]);
  const chapters = chaptersOf(file);
  const known = new Map<string, readonly string[]>();
  return (word) => {
    const before = known.get(word);
    if (before !== undefined) return before;
    const found = (chapters.get(firstTwo(Buffer.from(`${word} `, 'latin1'), 0)) ?? []).flatMap((chapter) =>
      lookUp(chapter, word),
    );
    known.set(word, found);
    return found;
  };
}

/** The stretches of lines that begin with the same two letters: a word is looked for in its own, not in the whole file. */
function chaptersOf(file: Buffer): ReadonlyMap<number, readonly Buffer[]> {
  const chapters = new Map<number, Buffer[]>();
  let [from, letters] = [0, 0];
  const close = (to: number) => {
    if (to > from) chapters.set(letters, [...(chapters.get(letters) ?? []), file.subarray(from, to)]);
    from = to;
  };
  for (let at = 0; at < file.length; at = file.indexOf(10, at) + 1) {
    const next = firstTwo(file, at);
    if (next !== letters) close(at);
    letters = next;
  }
  close(file.length);
  return chapters;
}

function firstTwo(text: Buffer, at: number): number {
  return 256 * (text[at] ?? 0) + (text[at + 1] ?? 0);
}

/** The entries of a word stand on lines one after another: "given", "given(2)". */
function lookUp(chapter: Buffer, word: string): string[] {
  const found: string[] = [];
  let at = 0;
  if (!startsWith(chapter, 0, `${word} `)) {
    const before = chapter.indexOf(`\n${word} `);
    if (before < 0) return found;
    at = before + 1;
  }
  while (startsWith(chapter, at, `${word} `) || startsWith(chapter, at, `${word}(`)) {
    const end = chapter.indexOf(10, at);
    const line = chapter.toString('latin1', at, end);
    found.push(line.slice(line.indexOf(' ') + 1).trim());
    at = end + 1;
  }
  return found;
}

function startsWith(chapter: Buffer, at: number, text: string): boolean {
  return chapter.toString('latin1', at, at + text.length) === text;
}
