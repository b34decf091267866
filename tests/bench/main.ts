import { type ComparedFigure, comparedWith, readRun, writeRun } from './compare.ts';
import { deckFigures } from './deck/figures.ts';
import { deckSpeedFigures } from './deck/speed.ts';
import { decoderFigures } from './decoders.ts';
import { doseFigures } from './dose.ts';
import { durableFigures } from './durable/figures.ts';
import { herdFileFigures } from './herd-file.ts';
import { hubFigures, hubPullFigures } from './hub/figures.ts';
import { latencyFigures } from './latency.ts';
import { mouthFigures } from './mouth.ts';
import { pageFigures } from './page.ts';
import { pageAliveFigures } from './page-alive.ts';
import { publishFigures } from './publish.ts';
import { figuresOfRun, printFigures, printInOne } from './table.ts';
import { tenYearFigures } from './ten-years/figures.ts';
import { voiceFigures } from './voice/figures.ts';

/** How long weights stream into the page, in minutes: unless more is asked for, and where it is. */
const STREAMED_MIN = 3;
const STREAMED_LONG_MIN = 60;
/** What share of ten years is built, where `--share=0.1` and the like say no other. */
const WHOLE = 1;

const TABLES: Readonly<Record<string, (share: number) => void | Promise<void>>> = {
  decoders: () => printFigures('Serial decoders', decoderFigures()),
  publish: () => printFigures('Telling the screen', publishFigures()),
  latency: async () => printFigures('From byte to state', await latencyFigures()),
  dose: () => printFigures('Dosing', doseFigures()),
  'herd-file': async () => printFigures('Reading a herd file', await herdFileFigures()),
  hub: () => hubFigures(),
  'hub-pull': hubPullFigures,
  mouth: async () => printFigures('The mouth', await mouthFigures()),
  deck: deckFigures,
  durable: async () => printFigures('Kept for years', await durableFigures()),
  'ten-years': (share) => tenYearFigures(share),
  page: async () =>
    printFigures('The page', [...(await pageFigures()), ...(await pageAliveFigures(STREAMED_MIN))]),
  'page-hour': async () => printFigures('The page', await pageAliveFigures(STREAMED_LONG_MIN)),
  'deck-speed': () => printFigures('Deck speed', deckSpeedFigures()),
  voice: () => voiceFigures('quick'),
  'voice-full': () => voiceFigures('full'),
};

/** Tables that take too long to run unasked. */
const ONLY_ASKED = ['hub-pull', 'voice-full', 'page-hour'];

function unasked(): string[] {
  return Object.keys(TABLES).filter((name) => !ONLY_ASKED.includes(name));
}

/** Where a run is kept, unless `--json=FILE` says elsewhere. */
const KEPT = 'tests/bench/out/latest.json';

/**
 * Prints the tables named, or all of them, and keeps the figures as JSON; `--against=FILE` compares them with those of
 * another run. Throws when a name is not among them.
 */
export async function main(asked: readonly string[]): Promise<void> {
  const names = asked.filter((word) => !word.startsWith('--'));
  const said = (option: string) =>
    asked.find((word) => word.startsWith(`--${option}=`))?.slice(option.length + 3);
  const share = Number(said('share') ?? WHOLE);
  if (!(share > 0 && share <= 1)) throw new Error('--share is more than 0 and at most 1');
  // Read before anything is measured: a name that is wrong is told at once, and the last run may be the one compared with.
  const against = said('against');
  const before = against === undefined ? null : readRun(against);
  for (const name of names.length > 0 ? names : unasked()) {
    const table = TABLES[name];
    if (table === undefined)
      throw new Error(`no table "${name}"; there are: ${Object.keys(TABLES).join(', ')}`);
    await table(share);
  }
  printInOne();
  const kept = said('json') ?? KEPT;
  writeRun(kept, figuresOfRun());
  console.log(`\nThese figures are in ${kept}.`);
  if (before !== null) printCompared(comparedWith(before, figuresOfRun()));
}

function printCompared(compared: readonly ComparedFigure[]): void {
  console.log('\nAgainst the other run: its ratio, this one, and what became of it');
  for (const { title, what, before, now, became } of compared) {
    const ratio = (value: number | null) => (value === null ? '–' : value.toPrecision(3)).padStart(9);
    console.log(`${ratio(before)} ${ratio(now)}  ${became.padEnd(8)} ${title}: ${what}`);
  }
}
