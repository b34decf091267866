import { calendarDay } from '../../core/dosing/local-time.ts';
import type { Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';

/** The farm's date as midnight in UTC. */
export function todayOf({ clock, config }: BarnContext): number {
  return Date.parse(calendarDay(clock.now().wallMs, config.timeZone));
}

/** Carries out what the season is told from, so that screens ask for it anew. */
export function seasonChanged(barn: BarnContext, change: () => Refusal | null): Refusal | null {
  const refused = change();
  barn.memory = { ...barn.memory, seasonRevision: barn.memory.seasonRevision + 1 };
  return refused;
}

/** Writes every good day of the preview, all or none. A day that is not over yet is kept as a forecast. */
export function takeWeatherIn(barn: BarnContext, previewId: string): Refusal | null {
  const stage = barn.weatherImport.stage();
  if (stage.step !== 'ready' || stage.id !== previewId) return 'no-such-preview';
  const { days } = stage.preview;
  if (days.length === 0) return 'nothing-to-take-in';
  const today = todayOf(barn);
  for (const day of days) barn.store.weather.put({ ...day, forecast: day.atMs >= today });
  return seasonChanged(barn, () => {
    barn.memory = { ...barn.memory, weatherTaken: { preview: previewId, days: days.length } };
    return null;
  });
}
