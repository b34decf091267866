import { readFileSync } from 'node:fs';
import type { Dictionary } from '../../core/speech/pronounce.ts';

/** Where Debian's `pocketsphinx-en-us` keeps the model of how English sounds. */
export const MODEL_FOLDER = '/usr/share/pocketsphinx/model/en-us';

/**
 * The pronouncing dictionary of the model, looked up in the file as it lies: a table of its 134,000 lines would
 * weigh ten times as much. Throws where the file is missing.
 */
export function openDictionary(path = `${MODEL_FOLDER}/cmudict-en-us.dict`): Dictionary {
  const file = Buffer.concat([Buffer.from('\n'), readFileSync(path), Buffer.from('\n')]);
  const known = new Map<string, readonly string[]>();
  return (word) => {
    const before = known.get(word);
    if (before !== undefined) return before;
    const found = lookUp(file, word);
    known.set(word, found);
    return found;
  };
}

/** The entries of a word stand on lines one after another: "given", "given(2)". */
function lookUp(file: Buffer, word: string): string[] {
  const found: string[] = [];
  let at = file.indexOf(`\n${word} `);
  while (at >= 0) {
    const end = file.indexOf('\n', at + 1);
    const line = file.toString('latin1', at + 1, end);
    const space = line.indexOf(' ');
    if (line.slice(0, space).replace(/\(\d+\)$/, '') !== word) break;
    found.push(line.slice(space + 1).trim());
    at = end + 1 < file.length ? end : -1;
  }
  return found;
}
