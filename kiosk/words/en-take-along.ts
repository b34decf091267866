import type { ExportName } from '../../shared/export-names.ts';
import type { ExportWritten } from '../../shared/exports.ts';
import type { Period } from '../daybook/take-period.ts';

/** English words of taking the records along. */
export const enTakeAlong = {
  door: 'Take it with you',
  which: 'What would you take?',
  ofWhich: (name: string) => `${name}: of which days?`,
  files: {
    register: { name: 'Register', what: 'every treatment, to print or as a table' },
    weights: { name: 'Weights', what: 'as a table' },
    scores: { name: 'Scores', what: 'as a table' },
    'treatment-events': { name: 'Treatments', what: 'for another farm program' },
    'weight-events': { name: 'Weights', what: 'for another farm program' },
    'score-events': { name: 'Body scores', what: 'for another farm program' },
    calendar: { name: 'Calendar', what: 'clear days, use by, checks' },
  } satisfies Record<ExportName, { name: string; what: string }>,
  periods: {
    month: 'This month',
    'last-month': 'Last month',
    quarter: 'Last 3 months',
    year: 'This year',
    'last-year': 'Last year',
    all: 'Everything',
  } satisfies Record<Period, string>,
  print: 'Print it',
  download: 'Download',
  write: 'Write to the stick',
  writing: 'Writing…',
  written: 'Written. The stick may be taken out.',
  notWritten: {
    'no-folder': 'No folder for files is set up here.',
    'not-there': 'The stick is not there. Plug it in, wait a moment, and try again.',
    full: 'The stick is full. Nothing was written.',
    'not-written': 'It could not be written. Try again, or use another stick.',
  } satisfies Record<Extract<ExportWritten, { ok: false }>['why'], string>,
  scan: 'Scan this with a phone on the farm’s network.',
  toStick: 'It will be written here:',
  noWay:
    'This kiosk keeps to itself: no stick is set up, and no other device may ask it. The set-up guide says how to change that.',
};
