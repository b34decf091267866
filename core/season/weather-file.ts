import { type DateFault, type DateOrder, dateCell } from '../herd-file/date.ts';
import type { FileRow } from '../herd-file/preview.ts';
import { DAY_MS } from '../moment.ts';
import { fahrenheit } from '../quantity/temperature.ts';
import type { DayWeather } from './weather.ts';

/** Why a cell of a weather file is refused. */
export type WeatherFault =
  | Exclude<DateFault, 'in-future'>
  | 'beyond-forecast'
  | 'missing'
  | 'not-a-number'
  | 'beyond-weather'
  | 'day-twice'
  | 'max-below-min';

/** A bad cell: the line of the file, from 1, and the heading of its column. */
export interface WeatherFileFault {
  readonly line: number;
  readonly heading: string;
  readonly why: WeatherFault;
}

/** The weather of a day of the calendar. */
export interface DatedWeather extends DayWeather {
  /** Midnight of the day in UTC, in milliseconds since 1970. */
  readonly atMs: number;
}

/** The good days of a file, oldest first, and what keeps the others out; or why it is no weather file at all. */
export type WeatherFileResult =
  | {
      readonly ok: true;
      readonly days: readonly DatedWeather[];
      /** Days between the first and the last that the file leaves out. */
      readonly missing: number;
      readonly faults: readonly WeatherFileFault[];
    }
  | { readonly ok: false; readonly why: 'empty' | 'no-such-columns' };

/** How far a forecast may reach ahead. */
const FORECAST_DAYS = 16;
/** Coldest and hottest day, in degrees Celsius, and most rain of a day in millimetres (the kiosk's own guard). */
const BEYOND = { coldest: -60, hottest: 60, wettest: 1900 } as const;
const MM_IN_INCH = 25.4;

type Column = 'day' | 'mean' | 'min' | 'max' | 'rain';
const HEADING: Readonly<Record<Column, RegExp>> = {
  day: /^(date|day)$/,
  mean: /^(mean )?temp(erature)?( mean)? \(?(c|f)\)?$/,
  min: /^(min temp(erature)?|temp(erature)? min) \(?(c|f)\)?$/,
  max: /^(max temp(erature)?|temp(erature)? max) \(?(c|f)\)?$/,
  rain: /^(rain|rainfall|precipitation) \(?(mm|in)\)?$/,
};

/** A column of the file: where it stands, how it is headed, and the unit its heading names. */
interface Found {
  readonly index: number;
  readonly heading: string;
  readonly unit: string;
}

/**
 * Reads daily weather: a date, "temperature C" or F (or its minimum and maximum, of which the middle is taken), and
 * "rain mm" or "in". Headings must name their units. Days may stand in any order and may end with up to 16 of forecast.
 */
export function readWeather(
  rows: readonly FileRow[],
  dateOrder: DateOrder,
  wallMs: number,
): WeatherFileResult {
  const [heading, ...rest] = rows;
  const filled = rest.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (heading === undefined || filled.length === 0) return { ok: false, why: 'empty' };
  const at = columnsOf(heading.cells);
  const [day, rain] = [at.get('day'), at.get('rain')];
  const hasTemperature = at.has('mean') || (at.has('min') && at.has('max'));
  if (day === undefined || rain === undefined || !hasTemperature) {
    return { ok: false, why: 'no-such-columns' };
  }
  const faults: WeatherFileFault[] = [];
  const byDay = new Map<number, DatedWeather>();
  for (const { line, cells } of filled) {
    const fault = (column: Found, why: WeatherFault): null => {
      faults.push({ line, heading: column.heading, why });
      return null;
    };
    const number = (column: Found, low: number, high: number): number | null =>
      numberOf(cells[column.index] ?? '', column.unit, low, high, (why) => fault(column, why));
    const read = dateCell((cells[day.index] ?? '').slice(0, 40), dateOrder, wallMs + FORECAST_DAYS * DAY_MS);
    const atMs = read.ok ? read.atMs : fault(day, read.why === 'in-future' ? 'beyond-forecast' : read.why);
    if (read.ok && atMs === null) fault(day, 'missing');
    const celsius = temperatureOf(at, number, fault);
    const rainMm = number(rain, 0, BEYOND.wettest);
    if (atMs === null || celsius === null || rainMm === null) continue;
    if (byDay.has(atMs)) fault(day, 'day-twice');
    else byDay.set(atMs, { atMs, celsius, rainMm });
  }
  const days = [...byDay.values()].sort((a, b) => a.atMs - b.atMs);
  const [first, last] = [days[0]?.atMs ?? 0, days.at(-1)?.atMs ?? 0];
  const missing = days.length === 0 ? 0 : (last - first) / DAY_MS + 1 - days.length;
  return { ok: true, days, missing, faults };
}

function columnsOf(cells: readonly string[]): Map<Column, Found> {
  const at = new Map<Column, Found>();
  for (const [index, cell] of cells.entries()) {
    const heading = cell
      .slice(0, 60)
      .replace(/^\uFEFF/, '')
      .trim();
    const plain = heading.toLowerCase().replace(/[\s_-]+/g, ' ');
    for (const column of Object.keys(HEADING) as Column[]) {
      const match = HEADING[column].exec(plain);
      if (match !== null && !at.has(column)) at.set(column, { index, heading, unit: match.at(-1) ?? '' });
    }
  }
  return at;
}

type Fault = (column: Found, why: WeatherFault) => null;

function temperatureOf(
  at: ReadonlyMap<Column, Found>,
  number: (column: Found, low: number, high: number) => number | null,
  fault: Fault,
): number | null {
  const [mean, min, max] = [at.get('mean'), at.get('min'), at.get('max')];
  if (mean !== undefined) return number(mean, BEYOND.coldest, BEYOND.hottest);
  if (min === undefined || max === undefined) return null;
  const low = number(min, BEYOND.coldest, BEYOND.hottest);
  const high = number(max, BEYOND.coldest, BEYOND.hottest);
  if (low === null || high === null) return null;
  return high < low ? fault(max, 'max-below-min') : (low + high) / 2;
}

function numberOf(
  cell: string,
  unit: string,
  low: number,
  high: number,
  fault: (why: WeatherFault) => null,
): number | null {
  const text = cell.slice(0, 40).trim();
  if (text === '') return fault('missing');
  if (!/^-?\d{1,5}([.,]\d{1,4})?$/.test(text)) return fault('not-a-number');
  const written = Number(text.replace(',', '.'));
  const value = unit === 'f' ? fahrenheit(written).value : unit === 'in' ? written * MM_IN_INCH : written;
  return value < low || value > high ? fault('beyond-weather') : value;
}
