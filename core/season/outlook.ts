import { DAY_MS } from '../moment.ts';
import { larvaeOver } from './larvae.ts';
import { type SeasonGuide, seasonGuide } from './risk.ts';
import { DAYS_AHEAD, evaporationOf, moistureOf, type WeatherRow } from './weather.ts';
import type { DatedWeather } from './weather-file.ts';

/** How the weather of a day is known: measured, foretold, or foretold once and never replaced since. */
export type Known = 'measured' | 'forecast' | 'old-forecast';

/** The weather of a day as it is kept. */
export interface KeptWeather extends DatedWeather {
  /** Whether it was written before the day was over. */
  readonly forecast: boolean;
}

/** A day of the curve. */
export interface SeasonDay extends DatedWeather {
  readonly known: Known;
  /** Whether there was more rain than evaporation about it. */
  readonly moist: boolean;
  /** Larvae on the herbage, as a share of the most that is shown. */
  readonly larvae: number;
}

/** What the weather says of barber's pole worm now, and what it does not know. */
export type SeasonOutlook =
  | { readonly kind: 'no-weather' }
  /** The last day known is so long ago that nothing can be said of now. */
  | { readonly kind: 'too-old'; readonly lastDayMs: number }
  | {
      readonly kind: 'ready';
      readonly guide: SeasonGuide;
      /** `null` where too few days are known to call the season low. */
      readonly suggestion: 'high' | 'low' | null;
      readonly days: readonly SeasonDay[];
      /** Measured days the guide rests on, of as many as it wants. */
      readonly measured: number;
      readonly wanted: number;
      /** Days between the last one known and today. */
      readonly endsDaysAgo: number;
      /** Days of the guide known from a forecast that was never replaced. */
      readonly oldForecasts: number;
      /** The first day of the row, where the curve begins with bare grass. */
      readonly beginsMs: number;
      /** Days missing before the row; 0 where it is the first weather kept. */
      readonly gapBefore: number;
    };

/** The guide looks at four weeks; the curve shows six and is begun at most a year ago (our own guards). */
const GUIDE_DAYS = 28;
const SHOWN_DAYS = 42;
const RUN_DAYS = 365;
/** Weather that ends longer ago says nothing of now, in days (our own guard). */
const TOO_OLD_DAYS = 14;
/** The model runs on eggs of one number each day: only the shape of its curve is shown. */
const EGGS_A_DAY = 100;

/** Reads the weather kept, oldest first, as it stands on a day: midnight in UTC of the farm's date. */
export function seasonOutlook(
  kept: readonly KeptWeather[],
  todayMs: number,
  latitude: number,
): SeasonOutlook {
  const last = kept.findLast(({ atMs }) => atMs < todayMs);
  if (last === undefined) return { kind: 'no-weather' };
  if (last.atMs < todayMs - TOO_OLD_DAYS * DAY_MS) return { kind: 'too-old', lastDayMs: last.atMs };
  const { row, gapBefore } = rowAround(kept, last.atMs);
  const past = row.filter(({ atMs }) => atMs < todayMs).length;
  const run = row.slice(Math.max(0, past - RUN_DAYS));
  const days = curveOf(run, todayMs, latitude);
  const guided = row.slice(Math.max(0, past - GUIDE_DAYS));
  const ahead = row.length - past;
  const measured = guided.length - ahead;
  const guide = seasonGuide(weatherRow(guided, latitude), measured);
  return {
    kind: 'ready',
    guide,
    suggestion: guide.risk === 'low' && measured < GUIDE_DAYS ? null : guide.risk,
    days: days.slice(-(SHOWN_DAYS + ahead)),
    measured,
    wanted: GUIDE_DAYS,
    endsDaysAgo: Math.round((todayMs - last.atMs) / DAY_MS) - 1,
    oldForecasts: guided.slice(0, measured).filter(({ forecast }) => forecast).length,
    beginsMs: run[0]?.atMs ?? last.atMs,
    gapBefore,
  };
}

/** The days in a row about one of them, and how many are missing before it. */
function rowAround(
  kept: readonly KeptWeather[],
  aboutMs: number,
): { row: readonly KeptWeather[]; gapBefore: number } {
  const about = kept.findIndex(({ atMs }) => atMs === aboutMs);
  const follows = (at: number): boolean =>
    (kept[at]?.atMs ?? Number.NaN) - (kept[at - 1]?.atMs ?? Number.NaN) === DAY_MS;
  let [first, end] = [about, about + 1];
  while (follows(first)) first -= 1;
  while (follows(end)) end += 1;
  const [before, begins] = [kept[first - 1]?.atMs, kept[first]?.atMs ?? aboutMs];
  const gapBefore = before === undefined ? 0 : Math.round((begins - before) / DAY_MS) - 1;
  return { row: kept.slice(first, end), gapBefore };
}

function weatherRow(days: readonly DatedWeather[], latitude: number): WeatherRow {
  const first = new Date(days[0]?.atMs ?? 0);
  const newYear = Date.UTC(first.getUTCFullYear(), 0, 1);
  return { latitude, firstDayOfYear: Math.round((first.getTime() - newYear) / DAY_MS) + 1, days };
}

function curveOf(run: readonly KeptWeather[], todayMs: number, latitude: number): SeasonDay[] {
  const weather = weatherRow(run, latitude);
  const moisture = moistureOf(run, evaporationOf(weather), 0, DAYS_AHEAD);
  const larvae = larvaeOver(weather, {
    eggsAtFirst: 0,
    onHerbageAtFirst: 0,
    daily: run.map(() => EGGS_A_DAY),
  }).map(({ onHerbage }) => onHerbage);
  const ahead = run.filter(({ atMs }) => atMs >= todayMs).length;
  const most = Math.max(...larvae.slice(-(SHOWN_DAYS + ahead)));
  return run.map(({ atMs, celsius, rainMm, forecast }, at) => ({
    atMs,
    celsius,
    rainMm,
    known: atMs >= todayMs ? 'forecast' : forecast ? 'old-forecast' : 'measured',
    moist: (moisture[at] ?? 0) >= 1,
    larvae: most > 0 ? (larvae[at] ?? 0) / most : 0,
  }));
}
