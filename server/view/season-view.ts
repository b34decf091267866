import { DAY_MS } from '../../core/moment.ts';
import { DEGREE_DAYS_NEEDED } from '../../core/season/larval-rates.ts';
import { type SeasonOutlook, seasonOutlook } from '../../core/season/outlook.ts';
import type { SeasonView, WeatherImportView } from '../../shared/season.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { todayOf } from '../barn/season-intents.ts';

/** How far back weather is read: the year the larvae are followed over, and something to tell a gap by. */
const READ_DAYS = 400;

/** A date such as "2026-04-30". */
function dateOf(atMs: number): string {
  return new Date(atMs).toISOString().slice(0, 10);
}

/** What the weather says now. */
export function seasonView(barn: BarnContext): SeasonView {
  const { wormSeason: season, latitude } = barn.memory.settings;
  if (latitude === null) return { season, latitude, outlook: { kind: 'no-latitude' } };
  const today = todayOf(barn);
  const kept = barn.store.weather.since(today - READ_DAYS * DAY_MS);
  return { season, latitude, outlook: outlookView(seasonOutlook(kept, today, latitude)) };
}

function outlookView(outlook: SeasonOutlook): SeasonView['outlook'] {
  if (outlook.kind === 'no-weather') return outlook;
  if (outlook.kind === 'too-old') return { kind: 'too-old', last: dateOf(outlook.lastDayMs) };
  const { guide, days, beginsMs, ...rest } = outlook;
  return {
    ...rest,
    lookAgainDays: guide.lookAgainDays,
    degreeDays: guide.degreeDays,
    degreeDaysNeeded: DEGREE_DAYS_NEEDED,
    moistDays: guide.moistDays,
    forecastDaysMissing: guide.forecastDaysMissing,
    begins: dateOf(beginsMs),
    days: days.map(({ atMs, ...day }) => ({ on: dateOf(atMs), ...day })),
  };
}

/** The reading of a weather file as HTTP tells it, with `count` faults beginning at `from`. */
export function weatherImportView(
  { weatherImport, memory }: BarnContext,
  from: number,
  count: number,
): WeatherImportView {
  const stage = weatherImport.stage();
  const files = weatherImport.files().map((file) => ({ ...file }));
  if (stage.step !== 'ready') return { files, stage: { ...stage } };
  const { file, id, dateOrder, preview } = stage;
  if (memory.weatherTaken?.preview === id)
    return { files, stage: { step: 'written', file, days: memory.weatherTaken.days } };
  const { days, missing, faults } = preview;
  const [first, last] = [days[0], days.at(-1)];
  return {
    files,
    stage: {
      step: 'ready',
      file,
      id,
      days: days.length,
      first: first === undefined ? null : dateOf(first.atMs),
      last: last === undefined ? null : dateOf(last.atMs),
      missing,
      asksOrder: dateOrder === null && faults.some(({ why }) => why === 'date-order-not-known'),
      faultCount: faults.length,
      from,
      faults: faults
        .slice(from, from + count)
        .map(({ line, heading, why }) => ({ line, column: heading, why })),
    },
  };
}
