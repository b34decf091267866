import type { ScreenLanguage } from '../../shared/language.ts';
import { AT_FIRST, LANGUAGES } from './languages.ts';
import type { FirstWords, Words } from './words.ts';

/** The words of a page, of one language at a time: the first of them from the start, all once they are asked for. */
export class Catalogue {
  #language: ScreenLanguage = 'en';
  #wantsAll = false;
  #now = $state.raw<FirstWords>(AT_FIRST);

  /** The words in use; what is read follows the language. All but the first are there once {@link whole} came true. */
  readonly words: Words = new Proxy({} as Words, { get: (_, section) => Reflect.get(this.#now, section) });

  /** Turns to a language; until its words are there, and where they cannot be had, the words stay as they are. */
  async use(language: ScreenLanguage): Promise<void> {
    if (language === this.#language) return;
    this.#language = language;
    await this.#fetch();
  }

  /** Fetches the words of every screen; rejects where they cannot be had. */
  async whole(): Promise<void> {
    this.#wantsAll = true;
    await this.#fetch();
  }

  /** Turns to the words of every screen if they need not be fetched; otherwise `false`. */
  hasWhole(): boolean {
    this.#wantsAll = true;
    const { part } = LANGUAGES[this.#language].whole;
    if (part !== null) this.#now = part;
    return part !== null;
  }

  async #fetch(): Promise<void> {
    const [language, all] = [this.#language, this.#wantsAll];
    const words = await (all ? LANGUAGES[language].whole : LANGUAGES[language].first).get();
    // Whoever asked last, or for more, has the last word; whoever asked before waits for it, and finds the words asked for.
    if (language !== this.#language || all !== this.#wantsAll) return this.#fetch();
    this.#now = words;
  }
}
