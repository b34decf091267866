import { calendarDay } from '../../../core/dosing/local-time.ts';
import { DAY_MS } from '../../../core/moment.ts';
import type { SeasonView, WeatherImportView } from '../../../shared/season.ts';
import { BASE, NOW } from './base-state.ts';
import type { Scene } from './scene.ts';

type Ready = Extract<SeasonView['outlook'], { kind: 'ready' }>;

/** Weeks that turn warm, with rain in two spells, and larvae that follow. */
function daysUntil(ahead: number, oldForecasts = 0): Ready['days'] {
  const today = Date.parse(calendarDay(Date.parse(NOW), 'UTC'));
  return Array.from({ length: 42 + ahead }, (_, at) => {
    const spell = (at > 12 && at < 18) || (at > 30 && at < 37) || at > 43;
    const warm = 9 + at / 4;
    return {
      on: calendarDay(today + (at - 42) * DAY_MS, 'UTC'),
      celsius: warm,
      rainMm: spell ? 4 + ((at * 7) % 9) : at % 11 === 0 ? 1 : 0,
      known: at >= 42 ? 'forecast' : at >= 42 - oldForecasts ? 'old-forecast' : 'measured',
      moist: spell,
      larvae: Math.min(1, (at / 45) ** 2 * (spell ? 1 : 0.86)),
    };
  });
}

const OUTLOOK: Ready = {
  kind: 'ready',
  suggestion: 'high',
  lookAgainDays: 7,
  degreeDays: 142.4,
  degreeDaysNeeded: 94.07,
  moistDays: 11,
  measured: 28,
  wanted: 28,
  forecastDaysMissing: 0,
  endsDaysAgo: 0,
  oldForecasts: 0,
  begins: '2025-09-01',
  gapBefore: 0,
  days: daysUntil(5),
};
const READY: Extract<WeatherImportView['stage'], { step: 'ready' }> = {
  step: 'ready',
  file: 'weather.csv',
  id: 'p1',
  days: 119,
  first: '2025-12-20',
  last: '2026-04-18',
  missing: 1,
  asksOrder: false,
  faultCount: 5,
  from: 0,
  faults: [
    { line: 14, column: 'temperature C', why: 'not-a-number' },
    { line: 31, column: 'rain mm', why: 'missing' },
    { line: 44, column: 'date', why: 'day-twice' },
  ],
};

function scene(name: string, view: Partial<SeasonView>, part = '', taps: readonly string[] = []): Scene {
  const season: SeasonView = { season: 'low', latitude: 51.5, outlook: OUTLOOK, ...view };
  return {
    name,
    place: `worm-check/season${part}`,
    state: BASE,
    http: { '/api/season': season },
    ...(taps.length === 0 ? {} : { taps }),
  };
}

function weatherScene(name: string, stage: WeatherImportView['stage'], files = 2): Scene {
  const known = [
    { name: 'weather.csv', bytes: 6_100 },
    { name: 'station may 2026.csv', bytes: 900 },
  ].slice(0, files);
  const season: SeasonView = { season: 'low', latitude: 51.5, outlook: { kind: 'no-weather' } };
  const http = { '/api/season': season, '/api/weather-import': { files: known, stage } };
  return { name, place: 'worm-check/season/weather', state: BASE, http };
}

/** What the weather says, and the way in for it. */
export const SEASON_SCENES: readonly Scene[] = [
  scene('season', {}),
  scene('season-agreed', { season: 'high' }),
  scene('season-low', { season: 'high', outlook: { ...OUTLOOK, suggestion: 'low' } }),
  scene('season-lacking', {
    outlook: {
      ...OUTLOOK,
      suggestion: null,
      days: daysUntil(0, 3).slice(-20),
      measured: 20,
      forecastDaysMissing: 4,
      endsDaysAgo: 2,
      oldForecasts: 3,
      gapBefore: 9,
      begins: '2026-03-25',
    },
  }),
  scene('season-why', {}, '/why'),
  scene('season-no-latitude', { latitude: null, outlook: { kind: 'no-latitude' } }),
  scene('season-no-weather', { outlook: { kind: 'no-weather' } }),
  scene('season-too-old', { outlook: { kind: 'too-old', last: '2026-03-02' } }),
  scene('season-latitude', {}, '/latitude'),
  scene('season-degrees', {}, '/latitude', ['latitude-south', 'key-3', 'key-8']),
  weatherScene('weather-files', { step: 'idle' }),
  weatherScene('weather-no-file', { step: 'idle' }, 0),
  weatherScene('weather-refused', {
    step: 'refused',
    file: 'weather.csv',
    why: 'no-such-columns',
    line: null,
  }),
  weatherScene('weather-ready', READY),
  weatherScene('weather-good', { ...READY, missing: 0, faultCount: 0, faults: [] }),
  weatherScene('weather-order', { ...READY, asksOrder: true }),
  weatherScene('weather-written', { step: 'written', file: 'weather.csv', days: 119 }),
];
