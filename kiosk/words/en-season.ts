import type { SeasonView, WeatherFaultView, WeatherImportView } from '../../shared/season.ts';

type Refused = Extract<WeatherImportView['stage'], { step: 'refused' }>['why'];
type Suggestion = Extract<SeasonView['outlook'], { kind: 'ready' }>['suggestion'];

/** English words of the season: what the weather says of barber's pole worm, and the way in for weather. */
export const enSeason = {
  door: 'Season',
  doorHint: 'what the weather says',
  title: (suggestion: Suggestion): string =>
    suggestion === null
      ? 'Too few days to tell'
      : suggestion === 'high'
        ? 'The weather says: HIGH'
        : 'The weather says: LOW',
  guide: 'A guide, not a count: how often to look, never whom to treat.',
  curve: 'Larvae on the grass, were dung the same each day; below: rain',
  today: 'today',
  missing: (days: number) => `Forecast rain missing: ${days} of the 4 days it needs.`,
  ends: (days: number) => (days === 1 ? 'Yesterday is missing.' : `The last ${days} days are missing.`),
  few: (measured: number, wanted: number) => `Known: ${measured} of ${wanted} days.`,
  gap: (days: number, date: string) => `A gap of ${days} days before ${date}.`,
  old: (days: number) =>
    days === 1 ? '1 day rests on an old forecast.' : `${days} days rest on old forecasts.`,
  whole: 'Four weeks and four days ahead are known.',
  set: { high: 'Season set: HIGH', low: 'Season set: LOW' },
  turn: { high: 'Set it to HIGH', low: 'Set it to LOW' },
  weather: 'Weather file',
  why: 'What it rests on',
  whyTitle: 'What it rests on',
  warmth: (gathered: string, days: number, needed: string) =>
    `Warmth: ${gathered} degree-days (°C) in ${days} days; from egg to infective larva takes ${needed}.`,
  moist: (days: number) =>
    `Wet: ${days} days with more rain than evaporation, the day and the next four together, and above 10 °C.`,
  look: (days: number) => `Look at their eyelids every ${days} days.`,
  begins: (date: string) => `The curve begins with bare grass on ${date}.`,
  unknown: 'It knows nothing of your pasture, shade, dung or how many eggs fall.',
  source: 'Larvae: GLOWORM-FL (Rose et al. 2015). How often to look: wormboss.com.au.',
  latitude: (degrees: string, south: boolean) => `Latitude ${degrees}° ${south ? 'south' : 'north'}`,
  noLatitude: 'Where is the farm?',
  noLatitudeHint: 'How long the days are, and so how fast the grass dries, goes by its latitude.',
  setLatitude: 'Set the latitude',
  which: 'Which side of the equator?',
  north: 'North',
  south: 'South',
  degrees: 'Degrees of latitude, 0 to 90',
  noWeather: 'No weather is known yet',
  noWeatherHint:
    'It needs each day’s mean temperature and rain, four weeks back, and four days of forecast rain.',
  tooOld: (date: string) => `The weather ends on ${date}`,
  tooOldHint: 'That is over two weeks ago, so it says nothing of now. Read a newer file.',
  pick: 'Which weather file?',
  noFile: 'No weather file yet',
  noFileHint:
    'Copy a CSV file into the folder “import” of the kiosk’s data. Columns: date, temperature C (or min and max), rain mm.',
  days: (days: string, left: number) =>
    left === 0 ? `${days} days, every row is good` : `${days} days, ${left} cells are bad`,
  span: (first: string, last: string) => `${first} to ${last}. Nothing is written yet.`,
  holes: (days: number) => (days === 0 ? '' : days === 1 ? '1 day is missing.' : `${days} days are missing.`),
  accept: (days: string) => `Hold: take ${days} days in`,
  taken: (days: string) => `${days} days taken in`,
  refused: {
    'not-utf8': 'It is not UTF-8 text. Save it as “CSV UTF-8”.',
    'broken-quotes': 'A quotation mark is left open.',
    'no-table': 'It is no table with commas, semicolons or tabs.',
    empty: 'There is nothing in it.',
    'no-such-columns':
      'Its first line must name a date, a temperature with C or F (or min and max), and rain with mm or in.',
    unreadable: 'It could not be read. Try the stick again.',
  } satisfies Record<Refused, string>,
  fault: {
    'not-a-date': 'not a day of the calendar',
    'date-order-not-known': 'day or month first?',
    'too-long-ago': 'too long ago',
    'beyond-forecast': 'further ahead than a forecast reaches',
    missing: 'missing',
    'not-a-number': 'not a number',
    'beyond-weather': 'no such weather on earth',
    'day-twice': 'this day stands twice',
    'max-below-min': 'the maximum lies below the minimum',
  } satisfies Record<WeatherFaultView, string>,
};
