import type { Species } from '../../core/herd/animal.ts';
import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import type { DateOrder } from '../../core/herd-file/date.ts';
import { type HerdPreview, type PreviewResult, previewInSteps } from '../../core/herd-file/preview.ts';
import {
  createTableReading,
  type TableReading,
  type TableStage,
  type TableSurroundings,
  type TableTrouble,
} from '../table-file/table-reading.ts';

/** What the keeper says of a file beside what it holds. */
export interface FileSayings {
  readonly dateOrder: DateOrder;
  readonly species: Species | null;
}

/** Nothing said of a file yet. */
export const UNASKED: FileSayings = { dateOrder: null, species: null };

interface Refused {
  readonly step: 'refused';
  readonly file: string;
  readonly why: Extract<PreviewResult, { ok: false }>['why'] | TableTrouble;
  readonly line: number | null;
  readonly heading: string | null;
}

interface Ready {
  readonly step: 'ready';
  readonly file: string;
  readonly id: string;
  readonly sayings: FileSayings;
  readonly preview: HerdPreview;
}

/** The herd a file is held against, and what the keeper says of the file. */
export interface HerdFileAsked {
  readonly sayings: FileSayings;
  readonly herd: readonly HerdAnimal[];
}

/** The reading of a herd file. */
export type HerdFile = TableReading<TableStage<Refused, Ready>, HerdFileAsked>;

/** The largest file that is read. */
export const LARGEST_FILE = 64 * 1024 * 1024;

/** Starts with no herd file read. */
export function createHerdFile(around: TableSurroundings): HerdFile {
  return createTableReading<Refused, Ready, HerdFileAsked>(
    {
      name: 'herd file',
      largest: LARGEST_FILE,
      refused: (file, why, line) => ({ step: 'refused', file, why, line, heading: null }),
      *judge(file, rows, { sayings, herd }) {
        const found = yield* previewInSteps(rows, { ...sayings, wallMs: around.now(), herd });
        return found.ok
          ? { step: 'ready', file, id: around.newId(), sayings, preview: found }
          : { step: 'refused', file, why: found.why, line: null, heading: found.heading };
      },
    },
    around,
  );
}
