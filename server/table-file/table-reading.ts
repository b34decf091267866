import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import type { FileRow } from '../../core/herd-file/preview.ts';
import type { Refusal } from '../../shared/intent.ts';
import { filesIn, type ImportFile } from './import-folder.ts';
import { type FileResult, readTableInParts } from './read-file.ts';

/** Where the reading of a table stands: what it is refused as and what it comes to are the file's own. */
export type TableStage<Refused, Ready> =
  | { readonly step: 'idle' }
  | { readonly step: 'reading'; readonly file: string }
  | Refused
  | Ready;

/** Why a file cannot be read as a table at all. */
export type TableTrouble = Extract<FileResult, { ok: false }>['why'] | 'unreadable';

/** The reading of one table after the other, a part at a time. `Asked` is what its rows are judged by. */
export interface TableReading<Stage, Asked> {
  /** The files of the import folder with their sizes, by name. */
  files(): readonly ImportFile[];
  stage(): Stage;
  /** Grows with every change of the stage. */
  revision(): number;
  /** Begins to read a file of the folder. */
  read(file: string, asked: Asked): Refusal | null;
  /** Takes bytes that came another way and reads them to the end. */
  take(file: string, bytes: Uint8Array, asked: Asked): Promise<void>;
  /** Judges the rows read anew. */
  judge(asked: Asked): Refusal | null;
  drop(): null;
}

/** What the reading of a table needs of its surroundings. */
export interface TableSurroundings {
  /** Where files are looked for; `null` where there is no such place. */
  readonly folder: string | null;
  readonly now: () => number;
  readonly newId: () => string;
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
}

/** What sets one kind of table apart from another. */
export interface TableKind<Refused, Ready, Asked> {
  /** What the file is called in the log. */
  readonly name: string;
  /** The largest file that is read, in bytes. */
  readonly largest: number;
  refused(file: string, why: TableTrouble, line: number | null): Refused;
  /** Judges rows; others are let in at each yield. */
  judge(file: string, rows: readonly FileRow[], asked: Asked): Generator<void, Refused | Ready>;
}

/** Starts with no file read. Nothing of a file is written before it is accepted. */
export function createTableReading<
  Refused extends { readonly step: 'refused' },
  Ready extends { readonly step: 'ready'; readonly file: string },
  Asked,
>(
  kind: TableKind<Refused, Ready, Asked>,
  { folder, changed, log }: TableSurroundings,
): TableReading<TableStage<Refused, Ready>, Asked> {
  let stage: TableStage<Refused, Ready> = { step: 'idle' };
  let rows: readonly FileRow[] = [];
  let revision = 0;
  /** Whatever was begun before the last begin is not wanted any more. */
  let run = 0;

  function to(next: TableStage<Refused, Ready>): void {
    stage = next;
    revision += 1;
    changed();
  }

  async function judge(file: string, asked: Asked, mine: number): Promise<void> {
    const steps = kind.judge(file, rows, asked);
    for (;;) {
      const step = steps.next();
      if (mine !== run) return;
      if (step.done === true) return to(step.value);
      await turn();
    }
  }

  /** Begins anew; what fails in it refuses the file. */
  async function begin(file: string, work: (mine: number) => Promise<void>): Promise<void> {
    run += 1;
    const mine = run;
    to({ step: 'reading', file });
    try {
      await work(mine);
    } catch (error) {
      log(`the ${kind.name} ${file} could not be read`, error);
      if (mine === run) to(kind.refused(file, 'unreadable', null));
    }
  }

  const take = (file: string, bytes: () => Promise<Uint8Array>, asked: Asked): Promise<void> =>
    begin(file, async (mine) => {
      const read = await readTableInParts(await bytes());
      if (mine !== run) return;
      if (!read.ok) return to(kind.refused(file, read.why, read.line));
      rows = read.rows;
      await judge(file, asked, mine);
    });

  const files = () => filesIn(folder, log);

  return {
    files,
    stage: () => stage,
    revision: () => revision,
    read(file, asked) {
      const found = files().find(({ name }) => name === file);
      if (folder === null || found === undefined) return 'no-such-file';
      if (found.bytes > kind.largest) return 'file-too-large';
      void take(file, () => readFile(join(folder, file)), asked);
      return null;
    },
    take: (file, bytes, asked) => take(file, async () => bytes, asked),
    judge(asked) {
      if (stage.step !== 'ready') return 'no-such-preview';
      const { file } = stage as Ready;
      void begin(file, (mine) => judge(file, asked, mine));
      return null;
    },
    drop() {
      run += 1;
      rows = [];
      to({ step: 'idle' });
      return null;
    },
  };
}
