import type { SpokenLanguage } from './language.ts';
import { spokenDigits } from './spoken-number.ts';

/** A run of capitals this long or shorter is letters of a code, such as "B" or "QX", not a word written large. */
const LETTERS_OF_A_CODE = 3;

/** An animal's name as it is called out: digits one by one, letters of a code one by one, the rest as it stands. */
export function spokenName(name: string, language: SpokenLanguage): string {
  const runs = name.match(/\d+|\p{L}+/gu) ?? [];
  return runs
    .map((run) => {
      if (/^\d/.test(run)) return spokenDigits(run, language);
      const code = run.length <= LETTERS_OF_A_CODE && run === run.toUpperCase();
      return code ? Array.from(run).join(' ') : run;
    })
    .join(' ');
}
