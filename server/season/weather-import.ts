import type { DateOrder } from '../../core/herd-file/date.ts';
import { readWeather, type WeatherFileResult } from '../../core/season/weather-file.ts';
import {
  createTableReading,
  type TableReading,
  type TableStage,
  type TableSurroundings,
  type TableTrouble,
} from '../table-file/table-reading.ts';

interface Refused {
  readonly step: 'refused';
  readonly file: string;
  readonly why: Extract<WeatherFileResult, { ok: false }>['why'] | TableTrouble;
  readonly line: number | null;
}

interface Ready {
  readonly step: 'ready';
  readonly file: string;
  readonly id: string;
  readonly dateOrder: DateOrder;
  readonly preview: Extract<WeatherFileResult, { ok: true }>;
}

/** The reading of a weather file, judged by which comes first in its dates. */
export type WeatherImport = TableReading<TableStage<Refused, Ready>, DateOrder>;

/** The largest file that is read: a century of days. */
export const LARGEST_WEATHER_FILE = 4 * 1024 * 1024;

/** Starts with no weather file read. */
export function createWeatherImport(around: TableSurroundings): WeatherImport {
  return createTableReading<Refused, Ready, DateOrder>(
    {
      name: 'weather file',
      largest: LARGEST_WEATHER_FILE,
      refused: (file, why, line) => ({ step: 'refused', file, why, line }),
      // biome-ignore lint/correctness/useYield: a century of days is judged in one go
      *judge(file, rows, dateOrder) {
        const found = readWeather(rows, dateOrder, around.now());
        return found.ok
          ? { step: 'ready', file, id: around.newId(), dateOrder, preview: found }
          : { step: 'refused', file, why: found.why, line: null };
      },
    },
    around,
  );
}
