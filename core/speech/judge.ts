import type { Fit, Heard, RejectedWhy } from './command.ts';
import { type Decoded, isSpoken, type PathPart, wordsOf } from './decoded.ts';
import { commandFrom } from './interpret.ts';
import type { MayBeHeard } from './may-be-heard.ts';

/** The least fit that passes as a command. */
export type Limits = Fit;

/** Chosen on the tuning voices of the bench, where true commands and other talk part. */
export const LIMITS: Limits = { overPhones: -30, worstWord: -45, whole: -45, overRivals: 0 };
/** A dose is logged by what was read back, so it must fit better than a screen that is gone to. */
export const GIVEN_LIMITS: Limits = { overPhones: -26, worstWord: -36, whole: -36, overRivals: 3 };

/** Phrases last this long, in frames of 10 ms: below is a knock, above an engine. */
const SHORTEST = 25;
const LONGEST = 500;

/** What a stretch of sound is taken for: a command that fits better than other talk, or why it is none. */
export function judge(decoded: Decoded, may: MayBeHeard): Heard {
  const path = decoded.commands ?? [];
  const words = wordsOf(path);
  const fit = fitOf(decoded);
  const reject = (why: RejectedWhy): Heard => ({ kind: 'rejected', why, words, fit });
  const command = commandFrom(words, may);
  if (command === null) return reject('no-phrase');
  const frames = framesOf(path.filter(isSpoken));
  if (frames < SHORTEST) return reject('too-short');
  if (frames > LONGEST) return reject('too-long');
  const limits = command.kind === 'given' ? GIVEN_LIMITS : LIMITS;
  return fit !== null && passes(fit, limits) ? { kind: 'command', command, words, fit } : reject('unsure');
}

function passes(fit: Fit, limits: Limits): boolean {
  return (
    fit.overPhones >= limits.overPhones &&
    fit.worstWord >= limits.worstWord &&
    fit.whole >= limits.whole &&
    fit.overRivals >= limits.overRivals
  );
}

/** How well a sound fits, or `null` where a search came to no end. */
export function fitOf({ commands, rivals, phones }: Decoded): Fit | null {
  if (commands === null || rivals === null || phones === null) return null;
  const spoken = commands.filter(isSpoken);
  const frames = framesOf(spoken);
  if (frames === 0) return null;
  const over = (part: PathPart, others: readonly PathPart[]): number =>
    part.acoustic - scoreWithin(others, part);
  const sum = (parts: readonly PathPart[], others: readonly PathPart[]): number =>
    parts.reduce((total, part) => total + over(part, others), 0) / frames;
  return {
    overPhones: sum(spoken, phones),
    worstWord: Math.min(...spoken.map((part) => over(part, phones) / framesOf([part]))),
    whole: sum(commands, phones),
    overRivals: sum(spoken, rivals),
  };
}

function framesOf(parts: readonly PathPart[]): number {
  return parts.reduce((total, { from, to }) => total + to - from + 1, 0);
}

/** What a path scores over the frames of another's part: a part it shares only partly counts by its share. */
function scoreWithin(path: readonly PathPart[], { from, to }: PathPart): number {
  return path.reduce((sum, part) => {
    const shared = Math.min(to, part.to) - Math.max(from, part.from) + 1;
    return shared <= 0 ? sum : sum + (part.acoustic * shared) / (part.to - part.from + 1);
  }, 0);
}
