import type { Sample } from '../platform.ts';

/** A weight a method took for held: how much, in grams, and when, in milliseconds from the start of the recording. */
export interface Taken {
  readonly grams: number;
  readonly at: number;
}

/** A rule that watches one visit reading by reading; answers a weight in grams once it believes one. */
export type Watcher = (sample: Sample) => number | null;

/** A known way to read a restless weight, with the settings it is tried in. */
export interface Method {
  readonly name: string;
  readonly settings: readonly Setting[];
  /** Begins a visit: called when the first load appears, and again whenever the deck was light in between. */
  watch(setting: Setting, division: number): Watcher;
}

/** Numbers a method can be tuned by; what each means is the method's own affair. */
export type Setting = readonly number[];

/** The first weight a method holds in a recording; loads below the limit of a step-on begin it anew. */
export function firstTaken(
  method: Method,
  setting: Setting,
  samples: readonly Sample[],
  division: number,
): Taken | null {
  const limit = Math.max(10 * division, 500);
  let watcher: Watcher | null = null;
  for (const sample of samples) {
    if (sample.grams < limit) {
      watcher = null;
      continue;
    }
    watcher ??= method.watch(setting, division);
    const grams = watcher(sample);
    if (grams !== null) return { grams, at: sample.at };
  }
  return null;
}

/** All settings that combine one number of each list. */
export function everySetting(...lists: readonly (readonly number[])[]): Setting[] {
  return lists.reduce<Setting[]>(
    (settings, list) => settings.flatMap((setting) => list.map((number) => [...setting, number])),
    [[]],
  );
}
