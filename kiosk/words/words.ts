import { getContext, setContext } from 'svelte';
import { Catalogue } from './catalogue.svelte.ts';
import type { en } from './en.ts';
import type { enWhole } from './en-whole.ts';

const KEY = Symbol('words');

type EnglishFirst = typeof en;
type EnglishWhole = typeof enWhole;

/** The words a page begins with, in one language; English is the form of all. */
export interface FirstWords extends EnglishFirst {}
/** Every word the screen can show, in one language. */
export interface Words extends EnglishWhole {}

/** Puts the words of a page in context. */
export function createWords(catalogue: Catalogue): Catalogue {
  return setContext(KEY, catalogue);
}

/** The words of the page, whatever its language comes to be; for screens that {@link Lazily} fetches. */
export function useWords(): Words {
  return useCatalogue().words;
}

/** The words that are there from the start, for screens that nothing is fetched for. */
export function useFirstWords(): FirstWords {
  return useCatalogue().words;
}

/** The words of the page and the ways to have others; the first English ones where none were put in context. */
export function useCatalogue(): Catalogue {
  return getContext<Catalogue | undefined>(KEY) ?? new Catalogue();
}
