import type { Command } from '../../../core/speech/command.ts';
import type { MayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { asleep } from '../../../core/speech/wake.ts';
import { COMMANDS, GIVEN, OFFERED, OTHERS, type Said, TAGS, WAITING, WRONG_GIVEN } from './cases.ts';
import { memoryOfAnEar } from './memory.ts';
import { runTrials, someOf, type Trial } from './run.ts';
import { SPEAKERS } from './speakers.ts';

/** How many of each are said at each loudness over the noise. */
interface Size {
  readonly commands: number;
  readonly readBacks: number;
  readonly tags: number;
  /** Sentences that are none, where a dose is on offer and a quarter as many where an animal is waited for or it sleeps. */
  readonly others: number;
  readonly wrong: number;
}

/** A few minutes on a quiet machine, and some forty. */
const SIZES = {
  quick: { commands: 60, readBacks: 40, tags: 60, others: 80, wrong: 60 },
  full: { commands: 300, readBacks: 150, tags: 300, others: 500, wrong: 500 },
} as const satisfies Record<string, Size>;

/** How loud the voice is over the noise, in dB. */
const LOUDNESS = [20, 10];

/** Sentences no limit was chosen on. */
const HELD_OUT_OTHERS = OTHERS.filter((_, i) => i % 2 === 1);

/** Says everything with the held-out voices and prints how well it was heard, and what was heard that was not said. */
export async function voiceFigures(size: keyof typeof SIZES): Promise<void> {
  const speakers = SPEAKERS.filter(({ set }) => set === 'held-out');
  const all: Placed[] = [];
  console.log(`\nHearing, ${size} size`);
  console.log(
    'Every voice is synthetic; no person was heard. Limits were chosen on other voices and sentences.',
  );
  console.log(`Voices: ${speakers.map(({ name }) => name).join(', ')}`);
  console.log('Noises by turns: pink, fan, bleats, clatter; every other four in a room that echoes.\n');
  console.log(
    '  dB  commands         tags             wrong tags      read-backs       end of speech to command',
  );
  for (const snrDb of LOUDNESS) {
    const heard: Placed[] = [];
    for (const { place, may, said } of placesOf(SIZES[size], snrDb)) {
      const trials = await runTrials([{ may, snrDb, said }], speakers);
      heard.push(...trials.map((trial) => ({ place, trial })));
    }
    all.push(...heard);
    printLoudness(
      snrDb,
      heard.map(({ trial }) => trial),
    );
  }
  printFalse(all);
  const answered = all.map(({ trial }) => trial).filter(right);
  console.log(`\nend of speech to command: ${delays(answered)}`);
  console.log(`memory of the engine: ${(await memoryOfAnEar(WAITING)).toFixed(0)} MB with a herd of 60`);
}

/** Where the kiosk stands while something is said. */
type Place = 'offered' | 'waiting' | 'asleep';

interface Placed {
  readonly place: Place;
  readonly trial: Trial;
}

function placesOf(
  { commands, readBacks, tags, others, wrong }: Size,
  snrDb: number,
): { place: Place; may: MayBeHeard; said: Said[] }[] {
  const few = Math.ceil(others / 4);
  return [
    {
      place: 'offered',
      may: OFFERED,
      said: [
        ...someOf(COMMANDS, commands, snrDb),
        ...someOf(GIVEN, readBacks, snrDb),
        ...someOf(HELD_OUT_OTHERS, others, snrDb),
        ...someOf(WRONG_GIVEN, wrong, snrDb),
      ],
    },
    {
      place: 'waiting',
      may: WAITING,
      said: [...someOf(TAGS, tags, snrDb), ...someOf(HELD_OUT_OTHERS, few, snrDb + 1)],
    },
    { place: 'asleep', may: asleep(WAITING), said: someOf(HELD_OUT_OTHERS, few, snrDb + 2) },
  ];
}

function printLoudness(snrDb: number, trials: readonly Trial[]): void {
  const [command, tag, read] = (['command', 'tag', 'given'] as const).map((kind) => of(trials, kind)) as [
    Trial[],
    Trial[],
    Trial[],
  ];
  const cells = [
    String(snrDb).padStart(4),
    outOf(command.filter(right), command).padEnd(15),
    outOf(tag.filter(right), tag).padEnd(15),
    outOf(tag.filter(wrong), tag).padEnd(14),
    outOf(read.filter(right), read).padEnd(15),
    delays([...command, ...tag, ...read].filter(right)),
  ];
  console.log(cells.join('  '));
}

/** What was heard that nobody said. Nothing in so many shows only that it is rarer than three in so many (95 %). */
function printFalse(all: readonly Placed[]): void {
  const others = (place: Place) =>
    all.flatMap(({ place: its, trial }) => (its === place && trial.said.kind === 'other' ? [trial] : []));
  const misread = of(
    all.map(({ trial }) => trial),
    'wrong-given',
  );
  const offered = others('offered');
  const rows: [string, Trial[], Trial[]][] = [
    ['talk taken for anything, a dose on offer', offered.filter(accepted), offered],
    ['talk taken for anything, an animal waited for', others('waiting').filter(accepted), others('waiting')],
    ['talk that wakes a kiosk, or more', others('asleep').filter(accepted), others('asleep')],
    ['talk taken for a dose, whatever volume', offered.filter(heardGiven), offered],
    ['talk that gives the dose shown', offered.filter(given), offered],
    ['wrong read-backs taken for anything', misread.filter(accepted), misread],
    ['wrong read-backs that give the dose shown', misread.filter(given), misread],
  ];
  console.log('\nHeard, and not said');
  for (const [what, some, among] of rows) {
    const less =
      some.length === 0 && among.length > 0 ? `  < ${(300 / among.length).toFixed(1)} % (95 %)` : '';
    console.log(`${what.padEnd(46)}  ${outOf(some, among)}${less}`);
  }
}

function of(trials: readonly Trial[], kind: Said['kind']): Trial[] {
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

function wrong(trial: Trial): boolean {
  return accepted(trial) && !right(trial);
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

/** Sound waited for after the speech, and the work after it. */
function delays(trials: readonly Trial[]): string {
  const ms = trials.map(({ outcome }) => (outcome.waitMs ?? 0) + (outcome.workMs ?? 0));
  const work = trials.map(({ outcome }) => outcome.workMs ?? 0);
  const [median, most, worked] = [quantile(ms, 0.5), quantile(ms, 0.95), quantile(work, 0.95)];
  return `p50 ${median} ms, p95 ${most} ms (of it work p95 ${worked} ms)`;
}

function quantile(values: readonly number[], share: number): string {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN).toFixed(0);
}
