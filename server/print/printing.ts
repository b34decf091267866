import { esShipped } from '../../shared/es-shipped.ts';
import type { ScreenLanguage } from '../../shared/language.ts';
import type { FarmRecords } from '../barn/barn-context.ts';
import { GROUP_WORDS, type GroupWords } from './group-words.ts';
import { labelTime } from './print-times.ts';
import { PRINT_WORDS, type PrintWords } from './print-words.ts';
import { REGISTER_WORDS, type RegisterWords } from './register-words.ts';

/** How a page is written: its words, and the clock and the names that go with them. */
export interface Printing {
  readonly language: ScreenLanguage;
  readonly words: PrintWords;
  readonly groups: GroupWords;
  readonly register: RegisterWords;
  /** A day and time, milliseconds since 1970, by the clock of the farm. */
  time(wallMs: number): string;
  /** A name or sentence that ships; what the farm wrote itself stays as it was written. */
  shipped(text: string): string;
}

/** Pages in a language, in the farm's time zone (an IANA name). */
export function printingIn(language: ScreenLanguage, timeZone: string): Printing {
  const words = PRINT_WORDS[language];
  return {
    language,
    words,
    groups: GROUP_WORDS[language],
    register: REGISTER_WORDS[language],
    time: (wallMs) => labelTime(wallMs, timeZone, words.locale),
    shipped: (text) => (language === 'es' ? esShipped(text) : text),
  };
}

/** Pages in the language of the screen. */
export function printingOf({ memory, config }: Pick<FarmRecords, 'memory' | 'config'>): Printing {
  return printingIn(memory.settings.language, config.timeZone);
}
