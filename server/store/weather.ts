import { z } from 'zod';
import type { KeptWeather } from '../../core/season/outlook.ts';
import type { Db } from './open-store.ts';

const Row = z.strictObject({
  day_ms: z.int(),
  celsius: z.number(),
  rain_mm: z.number(),
  forecast: z.int(),
});

/** The weather on disk, one row a day. */
export function createWeatherStore(db: Db) {
  const since = db.prepare(
    'SELECT day_ms, celsius, rain_mm, forecast FROM weather WHERE day_ms >= ? ORDER BY day_ms',
  );
  // What was measured is never given up for what was only foretold.
  const put = db.prepare(
    `INSERT INTO weather (day_ms, celsius, rain_mm, forecast) VALUES (@atMs, @celsius, @rainMm, @forecast)
     ON CONFLICT (day_ms) DO UPDATE SET celsius = excluded.celsius, rain_mm = excluded.rain_mm,
       forecast = excluded.forecast
     WHERE excluded.forecast <= weather.forecast`,
  );
  return {
    /** The days from one on, oldest first. */
    since(fromMs: number): KeptWeather[] {
      return since.all(fromMs).map((raw) => {
        const { day_ms: atMs, celsius, rain_mm: rainMm, forecast } = Row.parse(raw);
        return { atMs, celsius, rainMm, forecast: forecast === 1 };
      });
    },
    /** Writes the weather of a day over what was known of it. */
    put({ atMs, celsius, rainMm, forecast }: KeptWeather): void {
      put.run({ atMs, celsius, rainMm, forecast: forecast ? 1 : 0 });
    },
  };
}
