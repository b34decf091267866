import type { Fit, Heard, RejectedWhy } from './command.ts';
import { type Decoded, isSpoken, type PathPart, wordsOf } from './decoded.ts';
import { commandFrom } from './interpret.ts';
import type { MayBeHeard } from './may-be-heard.ts';

/** The least fit that passes as a command; a dose that is read back must also be so far from any other number. */
export type Limits = Omit<Fit, 'overOthers'>;

/** Chosen on the tuning voices of the bench, where true commands and other talk part. */
export const LIMITS: Limits = { overPhones: -30, worstWord: -45, whole: -35, overRivals: -12 };
/** A dose is logged by what was read back, so it must fit better than a screen that is gone to. */
export const GIVEN_LIMITS: Limits = { overPhones: -22, worstWord: -36, whole: -30, overRivals: -12 };
/** The least by which a read-back must beat every other. */
export const LEAST_OVER_OTHERS = 50;
/** A word more always fits a little better; the search charges it as much (`-wip` of the engine). */
const WORD_COST = 190;

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
  if (fit === null) return reject('unsure');
  const sure = command.kind === 'given' ? isSureOfNumber(fit) : passes(fit, LIMITS);
  return sure ? { kind: 'command', command, words, fit } : reject('unsure');
}

/** The words of a read-back that must be heard again by `otherReadBacks` before it is judged; else `null`. */
export function toHearAgain(decoded: Decoded, may: MayBeHeard): readonly string[] | null {
  const words = wordsOf(decoded.commands ?? []);
  if (commandFrom(words, may)?.kind !== 'given') return null;
  const fit = fitOf(decoded);
  return fit !== null && passes(fit, GIVEN_LIMITS) ? words : null;
}

function isSureOfNumber(fit: Fit): boolean {
  return passes(fit, GIVEN_LIMITS) && fit.overOthers !== null && fit.overOthers >= LEAST_OVER_OTHERS;
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
export function fitOf({ commands, rivals, phones, others }: Decoded): Fit | null {
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
    overOthers: others === undefined || others === null ? null : costed(commands) - costed(others),
  };
}

function costed(path: readonly PathPart[]): number {
  return path.reduce((sum, part) => sum + part.acoustic - (isSpoken(part) ? WORD_COST : 0), 0);
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
