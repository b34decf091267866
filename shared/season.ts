import { z } from 'zod';
import { intentId as id, ref } from './refs.ts';

/** Why a cell of a weather file keeps its day out. */
export const WeatherFaultView = z.enum([
  'not-a-date',
  'date-order-not-known',
  'too-long-ago',
  'beyond-forecast',
  'missing',
  'not-a-number',
  'beyond-weather',
  'day-twice',
  'max-below-min',
]);
/** Why a cell of a weather file keeps its day out. */
export type WeatherFaultView = z.infer<typeof WeatherFaultView>;

/** The reading of a weather file: `GET /api/weather-import`; `?from=` pages its faults. */
export const WeatherImportView = z.strictObject({
  files: z.array(z.strictObject({ name: z.string(), bytes: z.number() })),
  stage: z.discriminatedUnion('step', [
    z.strictObject({ step: z.literal('idle') }),
    z.strictObject({ step: z.literal('reading'), file: z.string() }),
    z.strictObject({
      step: z.literal('refused'),
      file: z.string(),
      why: z.enum(['not-utf8', 'broken-quotes', 'no-table', 'empty', 'no-such-columns', 'unreadable']),
      line: z.number().int().nullable(),
    }),
    z.strictObject({
      step: z.literal('ready'),
      file: z.string(),
      /** What an acceptance must name. */
      id: z.string(),
      /** Good days, and the first and the last of them as dates such as "2026-04-30"; `null` where there is none. */
      days: z.number().int(),
      first: z.string().nullable(),
      last: z.string().nullable(),
      /** Days between them that the file leaves out. */
      missing: z.number().int(),
      /** Whether the keeper must say first what comes first in its dates. */
      asksOrder: z.boolean(),
      faultCount: z.number().int(),
      from: z.number().int(),
      faults: z.array(z.strictObject({ line: z.number().int(), column: z.string(), why: WeatherFaultView })),
    }),
    z.strictObject({ step: z.literal('written'), file: z.string(), days: z.number().int() }),
  ]),
});
/** The reading of a weather file. */
export type WeatherImportView = z.infer<typeof WeatherImportView>;

/** What the weather says of barber's pole worm: `GET /api/season`. Dates such as "2026-04-30". */
export const SeasonView = z.strictObject({
  /** What the keeper has set. */
  season: z.enum(['high', 'low']),
  /** Degrees north; `null` while nobody has said. */
  latitude: z.number().nullable(),
  outlook: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('no-latitude') }),
    z.strictObject({ kind: z.literal('no-weather') }),
    z.strictObject({ kind: z.literal('too-old'), last: z.string() }),
    z.strictObject({
      kind: z.literal('ready'),
      /** `null` where too few days are known to say. */
      suggestion: z.enum(['high', 'low']).nullable(),
      lookAgainDays: z.number().int(),
      /** Gathered over the days measured, in degree-days Celsius above the base, and what one generation needs. */
      degreeDays: z.number(),
      degreeDaysNeeded: z.number(),
      moistDays: z.number().int(),
      measured: z.number().int(),
      wanted: z.number().int(),
      forecastDaysMissing: z.number().int(),
      endsDaysAgo: z.number().int(),
      oldForecasts: z.number().int(),
      /** The first day of the row, where the curve begins with bare grass. */
      begins: z.string(),
      gapBefore: z.number().int(),
      days: z.array(
        z.strictObject({
          on: z.string(),
          celsius: z.number(),
          rainMm: z.number(),
          known: z.enum(['measured', 'forecast', 'old-forecast']),
          moist: z.boolean(),
          /** Larvae on the grass as a share of the most shown: a shape, no count. */
          larvae: z.number(),
        }),
      ),
    }),
  ]),
});
/** What the weather says of barber's pole worm. */
export type SeasonView = z.infer<typeof SeasonView>;

/** What a keeper can want of the season. */
export const SEASON_INTENTS = [
  /** Reads a file of the import folder as a preview; nothing is written. */
  z.strictObject({ type: z.literal('weather-read'), id, file: z.string().min(1).max(255) }),
  /** Judges the file that was read anew, by what comes first in its dates. */
  z.strictObject({ type: z.literal('weather-judge'), id, dateOrder: z.enum(['day-first', 'month-first']) }),
  /** Takes all good days of a preview in, or none. */
  z.strictObject({ type: z.literal('weather-accept'), id, preview: ref }),
  z.strictObject({ type: z.literal('weather-drop'), id }),
  /** Where the farm lies, in degrees north. */
  z.strictObject({ type: z.literal('set-latitude'), id, degrees: z.number().min(-90).max(90) }),
] as const;
