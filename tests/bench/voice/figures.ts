import type { Command } from '../../../core/speech/command.ts';
import { COMMANDS, GIVEN, OFFERED, OTHERS, TAGS, WAITING, WRONG_GIVEN } from './cases.ts';
import { memoryOfAnEar } from './memory.ts';
import { type Block, runTrials, someOf, type Trial } from './run.ts';
import { SPEAKERS } from './speakers.ts';

/** How many of each are said: at 20 and 10 dB for accuracy, at every loudness for the rest. */
interface Size {
  readonly commands: number;
  readonly tags: number;
  readonly others: number;
  readonly wrong: number;
  readonly loudness: readonly number[];
}

/** A few minutes, and the whole of it: an hour and more. */
const SIZES = {
  quick: { commands: 45, tags: 30, others: 40, wrong: 40, loudness: [20, 10] },
  full: { commands: 300, tags: 300, others: 300, wrong: 250, loudness: [20, 10, 5, 0] },
} as const satisfies Record<string, Size>;

/** Says everything with the held-out voices and prints how well it was heard. */
export async function voiceFigures(size: keyof typeof SIZES): Promise<void> {
  const speakers = SPEAKERS.filter(({ set }) => set === 'held-out');
  const { commands, tags, others, wrong, loudness } = SIZES[size];
  const all: Trial[] = [];
  console.log(`\nHearing, ${size} size`);
  console.log(
    'Every voice is synthetic; no person was heard. Thresholds were chosen on other voices and sentences.',
  );
  console.log(`Voices: ${speakers.map(({ name }) => name).join(', ')}`);
  console.log('Noises by turns: pink, fan, bleats, clatter; every other four in a room that echoes.\n');
  console.log('  dB  commands      read-backs    tags          wrong tag  false accepts  wait p95  work p95');
  for (const snrDb of loudness) {
    const blocks: Block[] = [
      {
        may: OFFERED,
        snrDb,
        said: [
          ...someOf(COMMANDS, commands, snrDb),
          ...someOf(GIVEN, Math.ceil(commands / 2), snrDb),
          ...someOf(HELD_OUT_OTHERS, others, snrDb),
          ...someOf(WRONG_GIVEN, wrong, snrDb),
        ],
      },
      {
        may: WAITING,
        snrDb,
        said: [...someOf(TAGS, tags, snrDb), ...someOf(HELD_OUT_OTHERS, Math.ceil(others / 3), snrDb + 1)],
      },
    ];
    const trials = await runTrials(blocks, speakers);
    all.push(...trials);
    printRow(snrDb, trials);
  }
  const spoken = of(all, 'other');
  const misread = of(all, 'wrong-given');
  console.log(`\nfalse accepts of anything in talk: ${outOf(spoken.filter(accepted), spoken)}`);
  console.log(`a dose read out of talk, whatever volume: ${outOf(spoken.filter(heardGiven), spoken)}`);
  console.log(`a dose given by talk: ${outOf(spoken.filter(given), spoken)}`);
  console.log(`a dose given by a wrong read-back: ${outOf(misread.filter(given), misread)}`);
  console.log(`wrong read-backs refused in words: ${outOf(misread.filter(heardGiven), misread)}`);
  console.log(`memory of the engine: ${(await memoryOfAnEar(WAITING)).toFixed(0)} MB with a herd of 60`);
}

/** Sentences no threshold was chosen on. */
const HELD_OUT_OTHERS = OTHERS.filter((_, i) => i % 2 === 1);

function printRow(snrDb: number, trials: readonly Trial[]): void {
  const [command, read, tag, other] = (['command', 'given', 'tag', 'other'] as const).map((kind) =>
    of(trials, kind),
  ) as [Trial[], Trial[], Trial[], Trial[]];
  const answered = [...command, ...read, ...tag].filter(right);
  const cells = [
    String(snrDb).padStart(4),
    outOf(command.filter(right), command).padEnd(12),
    outOf(read.filter(right), read).padEnd(12),
    outOf(tag.filter(right), tag).padEnd(12),
    outOf(
      tag.filter((trial) => accepted(trial) && !right(trial)),
      tag,
    ).padEnd(9),
    outOf(other.filter(accepted), other).padEnd(13),
    `${p95(answered.map(({ outcome }) => outcome.waitMs ?? 0)).toFixed(0)} ms`.padEnd(8),
    `${p95(answered.map(({ outcome }) => outcome.workMs ?? 0)).toFixed(0)} ms`,
  ];
  console.log(cells.join('  '));
}

function of(trials: readonly Trial[], kind: Trial['said']['kind']): Trial[] {
  return trials.filter(({ said }) => said.kind === kind);
}

function commandsOf({ outcome }: Trial): Command[] {
  return outcome.heard.flatMap((heard) => (heard.kind === 'command' ? [heard.command] : []));
}

function accepted(trial: Trial): boolean {
  return commandsOf(trial).length > 0;
}

/** Exactly what was said, once, and nothing else. */
function right(trial: Trial): boolean {
  const commands = commandsOf(trial);
  return commands.length === 1 && JSON.stringify(commands[0]) === JSON.stringify(trial.said.want);
}

function heardGiven(trial: Trial): boolean {
  return commandsOf(trial).some(({ kind }) => kind === 'given');
}

/** Whether the dose shown would have been logged. */
function given(trial: Trial): boolean {
  return commandsOf(trial).some(
    (command) => command.kind === 'given' && Math.abs(command.volumeMl - trial.said.shownMl) < 1e-6,
  );
}

function outOf(some: readonly unknown[], all: readonly unknown[]): string {
  if (all.length === 0) return 'none said';
  return `${some.length}/${all.length} ${((100 * some.length) / all.length).toFixed(1)} %`;
}

function p95(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(0.95 * sorted.length))] ?? Number.NaN;
}
