import type { Command, Phrase } from '../../../core/speech/command.ts';
import { ALWAYS, NEXT, SCORES, SKIPS, UNDO } from '../../../core/speech/fixed-phrases.ts';
import type { MayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { readBackWords } from '../../../core/speech/read-back.ts';
import { BENCH_CALLS } from './herd.ts';
import { NON_COMMANDS } from './sentences.ts';

/** One thing said, and what it is. `want` is `null` where nothing must be understood. */
export interface Said {
  readonly text: string;
  readonly kind: 'command' | 'tag' | 'given' | 'other' | 'wrong-given';
  readonly want: Command | null;
  /** The dose on the screen while it is said, in mL. */
  readonly shownMl: number;
}

/** What may be heard while an animal is waited for: the largest grammar there is. */
export const WAITING: MayBeHeard = {
  phrases: [...ALWAYS, ...BENCH_CALLS.phrases, ...SKIPS, ...SCORES],
  given: null,
  leftOut: [],
};

/** What may be heard while a dose is on offer or was just given, together. */
export const OFFERED: MayBeHeard = {
  phrases: [...ALWAYS, ...SKIPS, ...SCORES, NEXT, UNDO],
  given: { decimals: 1 },
  leftOut: [],
};

const VOLUMES = [
  0.4, 0.8, 1.1, 1.5, 2, 2.4, 2.9, 3, 3.3, 3.6, 4.2, 5, 5.5, 6.7, 7.1, 8, 9.5, 11, 12, 13, 15, 18, 30, 33,
];

const said = (phrase: Phrase, kind: Said['kind']): Said => ({
  text: phrase.words.join(' '),
  kind,
  want: phrase.command,
  shownMl: 3.3,
});

/** Every phrase but those that call an animal or read a dose back. */
export const COMMANDS: readonly Said[] = OFFERED.phrases.map((phrase) => said(phrase, 'command'));

/** Every way to call an animal of the herd. */
export const TAGS: readonly Said[] = BENCH_CALLS.phrases.map((phrase) => said(phrase, 'tag'));

/** Doses read back as they are shown. */
export const GIVEN: readonly Said[] = VOLUMES.map((volumeMl) => readBack(volumeMl, volumeMl));

/** Doses read back wrong: the neighbours of the one shown, ten times it, a tenth, its point or a digit lost. */
export const WRONG_GIVEN: readonly Said[] = VOLUMES.flatMap((shownMl) =>
  mistakes(shownMl).map((said) => ({ ...readBack(said, shownMl), kind: 'wrong-given' as const })),
);

/** Sentences that are no commands, held against a dose of 3.3 mL on the screen. */
export const OTHERS: readonly Said[] = NON_COMMANDS.map((text) => ({
  text,
  kind: 'other',
  want: null,
  shownMl: 3.3,
}));

function readBack(volumeMl: number, shownMl: number): Said {
  return {
    text: readBackWords(volumeMl).join(' '),
    kind: 'given',
    want: { kind: 'given', volumeMl },
    shownMl,
  };
}

function mistakes(shownMl: number): number[] {
  const step = shownMl < 10 ? 0.1 : 1;
  const twin = { 13: 30, 30: 13, 15: 50, 18: 80 }[shownMl];
  const near = [-2, -1, 1, 2].map((steps) => shownMl + steps * step);
  const all = [
    ...near,
    10 * shownMl,
    shownMl / 10,
    Math.floor(shownMl),
    shownMl + 1,
    ...(twin ? [twin] : []),
  ];
  const rounded = all.map((volume) => Number(volume.toFixed(1)));
  return [...new Set(rounded)].filter((volume) => volume > 0 && volume < 1000 && volume !== shownMl);
}
