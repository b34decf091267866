import { daylightHours } from './daylight.ts';

/** The weather of one day. */
export interface DayWeather {
  /** Mean temperature of the air in degrees Celsius. */
  readonly celsius: number;
  /** Rain in millimetres. */
  readonly rainMm: number;
}

/** Weather of days in a row, at one place. */
export interface WeatherRow {
  /** Degrees north. */
  readonly latitude: number;
  /** Day of the year of the first day, 1 to 366 (included). */
  readonly firstDayOfYear: number;
  readonly days: readonly DayWeather[];
}

/** How many days ahead the moisture of a day looks; behind, too. */
export const DAYS_AHEAD = 4;
const MM_IN_INCH = 25.4;
const DAYS_IN_YEAR = 365;

/** Water a wet surface gives off in a day, in millimetres: Hamon's formula. */
export function evaporation(celsius: number, daylight: number): number {
  const saturation = (4.95 * Math.exp(0.062 * celsius)) / 100;
  return 0.55 * (daylight / 12) ** 2 * saturation * MM_IN_INCH;
}

/** Evaporation of each day of a row, in millimetres. */
export function evaporationOf({ latitude, firstDayOfYear, days }: WeatherRow): number[] {
  return days.map(({ celsius }, at) => {
    const dayOfYear = ((firstDayOfYear - 1 + at) % DAYS_IN_YEAR) + 1;
    return evaporation(celsius, daylightHours(latitude, dayOfYear));
  });
}

/** Rain over evaporation, summed over the days from `from` to `to` (included) around each day; fewer at the ends. */
export function moistureOf(
  days: readonly DayWeather[],
  evaporated: readonly number[],
  from: number,
  to: number,
): number[] {
  return days.map((_, at) => {
    const [first, last] = [Math.max(0, at + from), at + to + 1];
    const rain = days.slice(first, last).reduce((total, day) => total + day.rainMm, 0);
    return rain / evaporated.slice(first, last).reduce((total, mm) => total + mm, 0);
  });
}
