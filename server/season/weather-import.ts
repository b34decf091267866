import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { DateOrder } from '../../core/herd-file/date.ts';
import type { FileRow } from '../../core/herd-file/preview.ts';
import { readWeather, type WeatherFileResult } from '../../core/season/weather-file.ts';
import type { Refusal } from '../../shared/intent.ts';
import { filesIn, type ImportFile } from '../herd/import-folder.ts';
import { type FileResult, readHerdFileInParts } from '../herd/read-file.ts';

/** Where the reading of a weather file stands. */
export type WeatherImportStage =
  | { readonly step: 'idle' }
  | { readonly step: 'reading'; readonly file: string }
  | {
      readonly step: 'refused';
      readonly file: string;
      readonly why: Extract<FileResult | WeatherFileResult, { ok: false }>['why'] | 'unreadable';
      readonly line: number | null;
    }
  | {
      readonly step: 'ready';
      readonly file: string;
      readonly id: string;
      readonly dateOrder: DateOrder;
      readonly preview: Extract<WeatherFileResult, { ok: true }>;
    };

/** The reading of a weather file. Nothing of it is written before it is accepted. */
export interface WeatherImport {
  files(): readonly ImportFile[];
  stage(): WeatherImportStage;
  /** Grows with every change of the stage. */
  revision(): number;
  /** Begins to read a file of the folder. */
  read(file: string): Refusal | null;
  /** Takes bytes that came another way and reads them to the end. */
  take(file: string, bytes: Uint8Array): Promise<void>;
  /** Judges the rows read anew, by which comes first in their dates. */
  judge(dateOrder: DateOrder): Refusal | null;
  drop(): null;
}

/** What the reading of weather files needs of its surroundings. */
export interface WeatherImportOptions {
  /** Where files are looked for; `null` where there is no such place. */
  readonly folder: string | null;
  readonly now: () => number;
  readonly newId: () => string;
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
}

/** The largest file that is read: a century of days. */
export const LARGEST_WEATHER_FILE = 4 * 1024 * 1024;

/** Starts with no file read. */
export function createWeatherImport(options: WeatherImportOptions): WeatherImport {
  const { folder, now, newId, changed, log } = options;
  let stage: WeatherImportStage = { step: 'idle' };
  let rows: readonly FileRow[] = [];
  let revision = 0;
  /** Whatever was begun before the last begin is not wanted any more. */
  let run = 0;

  function to(next: WeatherImportStage): void {
    stage = next;
    revision += 1;
    changed();
  }

  function preview(file: string, dateOrder: DateOrder): void {
    const found = readWeather(rows, dateOrder, now());
    to(
      found.ok
        ? { step: 'ready', file, id: newId(), dateOrder, preview: found }
        : { step: 'refused', file, why: found.why, line: null },
    );
  }

  async function begin(file: string, bytes: () => Promise<Uint8Array>): Promise<void> {
    run += 1;
    const mine = run;
    to({ step: 'reading', file });
    try {
      const read = await readHerdFileInParts(await bytes());
      if (mine !== run) return;
      if (!read.ok) return to({ step: 'refused', file, why: read.why, line: read.line });
      rows = read.rows;
      preview(file, null);
    } catch (error) {
      log(`the weather file ${file} could not be read`, error);
      if (mine === run) to({ step: 'refused', file, why: 'unreadable', line: null });
    }
  }

  const files = () => filesIn(folder, log);
  return {
    files,
    stage: () => stage,
    revision: () => revision,
    read(file) {
      const found = files().find(({ name }) => name === file);
      if (folder === null || found === undefined) return 'no-such-file';
      if (found.bytes > LARGEST_WEATHER_FILE) return 'file-too-large';
      void begin(file, () => readFile(join(folder, file)));
      return null;
    },
    take: (file, bytes) => begin(file, async () => bytes),
    judge(dateOrder) {
      if (stage.step !== 'ready') return 'no-such-preview';
      preview(stage.file, dateOrder);
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
