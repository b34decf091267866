import { DEGREE_DAYS_NEEDED, degreeDays } from './larval-rates.ts';
import { DAYS_AHEAD, type DayWeather, evaporationOf, moistureOf, type WeatherRow } from './weather.ts';

/** What the weather of late means for barber's pole worm; a guide for how often to look, never for whom to treat. */
export interface SeasonGuide {
  /** How often to look: weekly where the risk is high, monthly where low (wormboss.com.au, goats). */
  readonly risk: 'high' | 'low';
  readonly lookAgainDays: 7 | 30;
  /** Degree-days gathered over the row, and how many times they are enough from egg to infective larva. */
  readonly degreeDays: number;
  readonly generations: number;
  /** Days of the row with more rain than evaporation about them. */
  readonly moistDays: number;
  /** How many of the days that moisture looks ahead to are missing behind the last day that was measured. */
  readonly forecastDaysMissing: number;
}

/** Minimum and maximum day means of the rule of thumb: larvae come where it is above 10 and up to 18 (mdsheepgoat 2010). */
const WARM_ENOUGH = 10;

/**
 * Reads weather up to today, and the forecast behind it, as a guide. `measured` is how many days of the row are past.
 *
 * Without four days of forecast rain the guide stands on past weather alone and says how many are missing.
 */
export function seasonGuide(weather: WeatherRow, measured: number): SeasonGuide {
  const { days } = weather;
  const moisture = moistureOf(days, evaporationOf(weather), 0, DAYS_AHEAD);
  const isMoist = (day: DayWeather, at: number): boolean =>
    (moisture[at] ?? 0) >= 1 && day.celsius > WARM_ENOUGH;
  const moistDays = days.filter(isMoist).length;
  const gathered = degreeDays(days.slice(0, measured).map(({ celsius }) => celsius));
  const isHigh = moistDays > 0 && gathered >= DEGREE_DAYS_NEEDED;
  return {
    risk: isHigh ? 'high' : 'low',
    lookAgainDays: isHigh ? 7 : 30,
    degreeDays: gathered,
    generations: gathered / DEGREE_DAYS_NEEDED,
    moistDays,
    forecastDaysMissing: Math.max(0, DAYS_AHEAD - (days.length - measured)),
  };
}
