import type { Screen } from './route.svelte.ts';

/** Opens a screen, and what is to be open in it. */
export type Go = (screen: Screen, ...path: string[]) => void;
