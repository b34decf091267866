import type { MayBeHeard } from './may-be-heard.ts';

/** What wakes a kiosk that listens all day: words hardly said in a barn one after the other. */
export const WAKE_WORDS: readonly string[] = ['kiosk', 'please', 'listen'];
/** How long a woken kiosk takes commands, in ms; each command heard begins the time anew. */
export const AWAKE_MS = 12_000;

/**
 * What a sleeping kiosk may hear: the wake phrase, alone or before what may be said now, in one breath.
 *
 * A dose is not among it: it is read back to a kiosk that was seen to listen.
 */
export function asleep(may: MayBeHeard): MayBeHeard {
  const woken = may.phrases.map(({ words, command }) => ({
    words: [...WAKE_WORDS, ...words],
    command: { kind: 'wake', also: command } as const,
  }));
  const alone = { words: WAKE_WORDS, command: { kind: 'wake', also: null } as const };
  return { phrases: [alone, ...woken], given: null, leftOut: may.leftOut };
}
