import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import type { Species } from '../../core/herd/animal.ts';
import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import type { DateOrder } from '../../core/herd-file/date.ts';
import {
  type FileRow,
  type HerdPreview,
  type PreviewResult,
  previewInSteps,
} from '../../core/herd-file/preview.ts';
import type { Refusal } from '../../shared/intent.ts';
import { filesIn, type ImportFile } from './import-folder.ts';
import { type FileResult, readHerdFileInParts } from './read-file.ts';

/** What the keeper says of a file beside what it holds. */
export interface FileSayings {
  readonly dateOrder: DateOrder;
  readonly species: Species | null;
}

/** Where the reading of a herd file stands. */
export type HerdFileStage =
  | { readonly step: 'idle' }
  | { readonly step: 'reading'; readonly file: string }
  | {
      readonly step: 'refused';
      readonly file: string;
      readonly why: Extract<FileResult | PreviewResult, { ok: false }>['why'] | 'unreadable';
      readonly line: number | null;
      readonly heading: string | null;
    }
  | {
      readonly step: 'ready';
      readonly file: string;
      readonly id: string;
      readonly sayings: FileSayings;
      readonly preview: HerdPreview;
    };

/** The reading of a herd file, a part at a time. Nothing of it is written before it is accepted. */
export interface HerdFile {
  /** The files of the import folder with their sizes, by name. */
  files(): readonly ImportFile[];
  stage(): HerdFileStage;
  /** Grows with every change of the stage. */
  revision(): number;
  /** Begins to read a file of the folder. */
  read(file: string, herd: readonly HerdAnimal[]): Refusal | null;
  /** Takes bytes that came another way and reads them to the end. */
  take(file: string, bytes: Uint8Array, herd: readonly HerdAnimal[]): Promise<void>;
  /** Judges the rows read anew. */
  judge(sayings: FileSayings, herd: readonly HerdAnimal[]): Refusal | null;
  drop(): null;
}

/** What the reading of herd files needs of its surroundings. */
export interface HerdFileOptions {
  /** Where files are looked for; `null` where there is no such place. */
  readonly folder: string | null;
  readonly now: () => number;
  readonly newId: () => string;
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
}

/** The largest file that is read. */
export const LARGEST_FILE = 64 * 1024 * 1024;
const UNASKED: FileSayings = { dateOrder: null, species: null };

/** Starts with no file read. */
export function createHerdFile({ folder, now, newId, changed, log }: HerdFileOptions): HerdFile {
  let stage: HerdFileStage = { step: 'idle' };
  let rows: readonly FileRow[] = [];
  let revision = 0;
  /** Whatever was begun before the last begin is not wanted any more. */
  let run = 0;

  function to(next: HerdFileStage): void {
    stage = next;
    revision += 1;
    changed();
  }

  async function preview(
    file: string,
    sayings: FileSayings,
    herd: readonly HerdAnimal[],
    mine: number,
  ): Promise<void> {
    const steps = previewInSteps(rows, { ...sayings, wallMs: now(), herd });
    for (;;) {
      const step = steps.next();
      if (mine !== run) return;
      if (step.done !== true) await turn();
      else if (!step.value.ok) {
        const { why, heading } = step.value;
        return to({ step: 'refused', file, why, line: null, heading });
      } else return to({ step: 'ready', file, id: newId(), sayings, preview: step.value });
    }
  }

  async function begin(
    file: string,
    bytes: () => Promise<Uint8Array>,
    herd: readonly HerdAnimal[],
  ): Promise<void> {
    run += 1;
    const mine = run;
    to({ step: 'reading', file });
    try {
      const read = await readHerdFileInParts(await bytes());
      if (mine !== run) return;
      if (!read.ok) return to({ step: 'refused', file, why: read.why, line: read.line, heading: null });
      rows = read.rows;
      await preview(file, UNASKED, herd, mine);
    } catch (error) {
      log(`the herd file ${file} could not be read`, error);
      if (mine === run) to({ step: 'refused', file, why: 'unreadable', line: null, heading: null });
    }
  }

  const files = () => filesIn(folder, log);

  return {
    files,
    stage: () => stage,
    revision: () => revision,
    read(file, herd) {
      const found = files().find(({ name }) => name === file);
      if (folder === null || found === undefined) return 'no-such-file';
      if (found.bytes > LARGEST_FILE) return 'file-too-large';
      void begin(file, () => readFile(join(folder, file)), herd);
      return null;
    },
    take: (file, bytes, herd) => begin(file, async () => bytes, herd),
    judge(sayings, herd) {
      if (stage.step !== 'ready') return 'no-such-preview';
      const { file } = stage;
      run += 1;
      to({ step: 'reading', file });
      void preview(file, sayings, herd, run);
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
