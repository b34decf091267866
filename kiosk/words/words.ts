import { getContext, setContext } from 'svelte';
import { en } from './en.ts';

const KEY = Symbol('words');

/** A catalogue: every word the screen can show, in one language. */
export type Words = typeof en;

/** Puts a catalogue in context. */
export function createWords(words: Words): Words {
  return setContext(KEY, words);
}

/** The catalogue of the page; English where none was put in context. */
export function useWords(): Words {
  return getContext<Words | undefined>(KEY) ?? en;
}
