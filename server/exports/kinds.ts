import { z } from 'zod';
import { bodyScoreEvent, type Json, treatmentEvent, weightEvent } from '../../core/exports/animal-data.ts';
import { calendarFile } from '../../core/exports/calendar.ts';
import { csvRecord } from '../../core/exports/csv.ts';
import { type ExchangeWorld, outsideAnimal, treatmentForExport } from '../../core/exports/exchange.ts';
import { type RegisterLine, registerHeading, registerRecord } from '../../core/exports/register.ts';
import { type CorrectionWords, registerLine } from '../../core/exports/register-line.ts';
import { EXPORT_NAMES } from '../../shared/export-names.ts';
import type { FarmRecords } from '../barn/barn-context.ts';
import { calendarEvents } from './calendar-events.ts';
import type { Asked } from './period.ts';
import { type AnimalWeighing, scoresOf, treatmentsOf, weightsOf } from './records.ts';

/** One of the files that can be taken along. */
export const ExportName = z.enum(EXPORT_NAMES);

/** A kind of file: its ending, what it is told to be, and its text piece by piece. */
export interface ExportKind {
  readonly ending: 'csv' | 'json' | 'ics';
  readonly type: string;
  readonly pieces: (barn: FarmRecords, asked: Asked) => Iterable<string>;
}

const CSV = { ending: 'csv', type: 'text/csv; charset=utf-8; header=present' } as const;
const JSON_ARRAY = { ending: 'json', type: 'application/json; charset=utf-8' } as const;

/** What the records are looked up with: everything but the records themselves. */
export function exportWorld({ memory, store, config }: FarmRecords) {
  const animals = store.animals.all();
  const byId = new Map(animals.map((animal) => [animal.id, animal]));
  return { formulary: memory.formulary, animals: byId, timeZone: config.timeZone };
}

/** The lines of the register that are asked for, oldest first. */
export function* registerLines(
  barn: FarmRecords,
  asked: Asked,
  words?: CorrectionWords,
): Generator<RegisterLine> {
  const world = exportWorld(barn);
  for (const entry of treatmentsOf(barn.store, asked)) yield registerLine(entry, world, words);
}

/** Every kind of file by its name. */
export const EXPORTS: Readonly<Record<z.infer<typeof ExportName>, ExportKind>> = {
  register: {
    ...CSV,
    *pieces(barn, asked) {
      yield registerHeading();
      for (const line of registerLines(barn, asked)) yield registerRecord(line);
    },
  },
  weights: {
    ...CSV,
    *pieces(barn, asked) {
      const { animals } = exportWorld(barn);
      yield csvRecord([
        'animal',
        'tag',
        'weighed at',
        'weight kg',
        'uncertainty kg',
        'method',
        'by',
        'treatment',
      ]);
      for (const weighing of weightsOf(barn.store, [...animals.values()], asked)) {
        const animal = animals.get(weighing.animalId);
        yield csvRecord([
          animal?.name ?? weighing.animalId,
          animal?.tag ?? null,
          new Date(weighing.atMs).toISOString(),
          weighing.mass.value / 1000,
          weighing.uncertainty === null ? null : weighing.uncertainty.value / 1000,
          weighing.method,
          weighing.by,
          weighing.treatmentId,
        ]);
      }
    },
  },
  scores: {
    ...CSV,
    *pieces(barn, asked) {
      const { animals } = exportWorld(barn);
      yield csvRecord(['animal', 'tag', 'seen at', 'eyelid', 'body', 'soiling', 'jaw', 'coat', 'by']);
      for (const seen of scoresOf(barn.store, asked)) {
        const animal = animals.get(seen.animalId);
        const { eyelid, body, soiling, jaw, coat, by } = seen;
        const name = animal?.name ?? seen.animalId;
        const at = new Date(seen.atMs).toISOString();
        yield csvRecord([name, animal?.tag ?? null, at, eyelid, body, soiling, jaw, coat, by]);
      }
    },
  },
  'weight-events': {
    ...JSON_ARRAY,
    *pieces(barn, asked) {
      const world = exportWorld(barn);
      yield* jsonArray(weightsOf(barn.store, [...world.animals.values()], asked), (weighing) =>
        weightEvent(weightForExport(weighing, world)),
      );
    },
  },
  'treatment-events': {
    ...JSON_ARRAY,
    *pieces(barn, asked) {
      const world = exportWorld(barn);
      yield* jsonArray(treatmentsOf(barn.store, asked), (entry) =>
        treatmentEvent(treatmentForExport(entry, world)),
      );
    },
  },
  'score-events': {
    ...JSON_ARRAY,
    *pieces(barn, asked) {
      const world = exportWorld(barn);
      yield* jsonArray(scoresOf(barn.store, asked), ({ animalId, atMs, by, body, sequence }) => {
        if (body === null) return null;
        const animal = outsideAnimal(animalId, world);
        const id = `score-${sequence}`;
        return bodyScoreEvent({ id, atMs, animal, by, changedAtMs: atMs, takenBack: false, score: body });
      });
    },
  },
  calendar: {
    ending: 'ics',
    type: 'text/calendar; charset=utf-8',
    *pieces(barn) {
      yield calendarFile(calendarEvents(barn), barn.clock.now().wallMs);
    },
  },
};

/** A JSON array, one value a line, so that it need never be held whole; `null` is left out. */
function* jsonArray<T>(rows: Iterable<T>, toJson: (row: T) => Json | null): Generator<string> {
  let before = '[\n';
  for (const row of rows) {
    const value = toJson(row);
    if (value === null) continue;
    yield before + JSON.stringify(value);
    before = ',\n';
  }
  yield before === '[\n' ? '[]\n' : '\n]\n';
}

function weightForExport(weighing: AnimalWeighing, world: ExchangeWorld) {
  const { atMs, by, method, hoursOffFeed, treatmentId, animalId } = weighing;
  return {
    id: treatmentId === null ? `${animalId}:${weighing.id}` : `${treatmentId}:weight`,
    atMs,
    animal: outsideAnimal(animalId, world),
    by,
    changedAtMs: atMs,
    takenBack: false,
    kilograms: weighing.mass.value / 1000,
    resolutionKilograms: null,
    method,
    hoursOffFeed,
  };
}
