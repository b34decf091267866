import { deckFigures } from './deck/figures.ts';
import { deckSpeedFigures } from './deck/speed.ts';
import { decoderFigures } from './decoders.ts';
import { doseFigures } from './dose.ts';
import { herdFileFigures } from './herd-file.ts';
import { latencyFigures } from './latency.ts';
import { publishFigures } from './publish.ts';
import { printFigures } from './table.ts';

const TABLES: Readonly<Record<string, () => void | Promise<void>>> = {
  decoders: () => printFigures('Serial decoders', decoderFigures()),
  publish: () => printFigures('Telling the screen', publishFigures()),
  latency: async () => printFigures('From byte to state', await latencyFigures()),
  dose: () => printFigures('Dosing', doseFigures()),
  'herd-file': async () => printFigures('Reading a herd file', await herdFileFigures()),
  deck: deckFigures,
  'deck-speed': () => printFigures('Deck speed', deckSpeedFigures()),
};

/** Prints the tables named, or all of them. Throws when a name is not among them. */
export async function main(names: readonly string[]): Promise<void> {
  for (const name of names.length > 0 ? names : Object.keys(TABLES)) {
    const table = TABLES[name];
    if (table === undefined)
      throw new Error(`no table "${name}"; there are: ${Object.keys(TABLES).join(', ')}`);
    await table();
  }
}
