import { join } from 'node:path';
import { readEnvironment } from '../config/environment.ts';
import { REAL_DATABASE } from '../config/load.ts';
import { type ChainReport, type ChainTrouble, verifyChain } from '../store/chain.ts';
import { Database } from '../store/sqlite.ts';

const WORDS: Readonly<Record<ChainTrouble['what'], string>> = {
  edited: 'is not what was written',
  gone: 'is missing',
  'not-linked': 'was not written by the kiosk',
  'link-gone': 'follows links that are missing',
  'end-gone': 'was the newest ever written, and is missing',
};

/** Reads a database against its chain without changing it. Throws when it cannot be read. */
export function verifyFile(file: string): ChainReport {
  const db = new Database(file, { readonly: true, fileMustExist: true });
  try {
    if (db.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'chain'").get() === undefined)
      throw new Error('it was written before records were chained: start the kiosk on it once');
    // One state of the file throughout, though the kiosk may be writing to it.
    return db.transaction(() => verifyChain(db))();
  } finally {
    db.close();
  }
}

/** The report as lines to print. */
export function verifyLines(file: string, { links, head, troubles }: ChainReport): string[] {
  return [
    `${file}: ${links} records linked, the newest link is ${head ?? 'none'}`,
    ...troubles.map(({ what, kind, sequence }) => `  ${kind} ${sequence} ${WORDS[what]}`),
    troubles.length === 0
      ? 'Nothing was changed past the kiosk, as far as the chain can tell.'
      : `${troubles.length} found: the file was changed past the kiosk, or is damaged.`,
  ];
}

/** `npm run verify [-- FILE]`: the data folder's database where no file is named. Answers the exit code. */
export function verify(asked: string | undefined): number {
  const file = asked ?? join(readEnvironment(process.env, process.cwd()).dataFolder, REAL_DATABASE);
  try {
    const report = verifyFile(file);
    for (const line of verifyLines(file, report)) console.log(line);
    return report.troubles.length === 0 ? 0 : 1;
  } catch (error) {
    console.error(`${file} could not be read: ${error instanceof Error ? error.message : error}`);
    return 2;
  }
}
