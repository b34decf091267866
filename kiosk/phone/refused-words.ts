import type { LetIn } from '../../shared/network.ts';
import type { Words } from '../words/words.ts';

/** Why a code or a PIN was not taken, and how long to wait; `null` is a kiosk that did not answer. */
export function refusedWords(words: Words, letIn: Extract<LetIn, { ok: false }> | null): string {
  if (letIn === null) return words.phones.here.notReached;
  const why = words.phones.here.notLetIn[letIn.why];
  return letIn.waitSeconds > 0 ? `${why} ${words.phones.here.wait(letIn.waitSeconds)}` : why;
}
