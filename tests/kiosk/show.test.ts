import { expect, test } from 'vitest';
import { Show, type ShowSettings } from '../../kiosk/words/show.ts';

function showing(settings: Partial<ShowSettings> = {}): Show {
  return new Show({
    unit: 'lb',
    division: 45.359237,
    benchDivision: 1,
    locale: 'en-GB',
    nowMs: new Date(2026, 3, 14, 14, 3, 10).getTime(),
    ...settings,
  });
}

test.each([
  [3.3, 0.1, '3.3 mL'],
  [3, 0.1, '3 mL'],
  [0.25, 0.01, '0.25 mL'],
  [11.5, 0.1, '11.5 mL'],
  [35, 1, '35 mL'],
])('a dose of %d mL at marks of %d reads "%s"', (ml, graduation, shown) => {
  expect(showing().dose(ml, graduation)).toBe(shown);
});

test('a weight keeps its scale’s own decimals, in the keeper’s unit', () => {
  expect(showing().weight(13_603)).toBe('30.0 lb');
  expect(showing({ unit: 'kg', division: 100 }).weight(13_603)).toBe('13.6 kg');
  expect(showing({ unit: 'kg', division: null }).weight(13_603)).toBe('13.60 kg');
});

test.each([null, undefined])('a weight that is %s is a dash', (value) => {
  expect(showing().weight(value)).toBe('–');
  expect(showing().bench(value)).toBe('–');
});

test('a time of today is bare, one of another day brings its day', () => {
  expect(showing().when(new Date(2026, 3, 14, 9, 5).toISOString())).toBe('09:05');
  expect(showing().when(new Date(2026, 3, 15, 2, 3).toISOString())).toBe('Wed 15 Apr 02:03');
});

test('minutes left count a begun minute and never go below none', () => {
  expect(showing().minutesUntil(new Date(2026, 3, 14, 14, 12).toISOString())).toBe(9);
  expect(showing().minutesUntil(new Date(2026, 3, 14, 14, 3, 11).toISOString())).toBe(1);
  expect(showing().minutesUntil(new Date(2026, 3, 14, 14, 0).toISOString())).toBe(0);
});

test('strengths, rates and plain volumes follow the display rules', () => {
  expect(showing().strength(49.451)).toBe('49.45 mg/mL');
  expect(showing().rate(12)).toBe('12 mg/kg');
  expect(showing().rate(undefined)).toBe('–');
  expect(showing().volume(1812.4)).toBe('1,812 mL');
  expect(showing().packet(52)).toBe('52 g');
});

test('in Spanish the point stays the point, and thousands stand apart without a comma', () => {
  const spanish = showing({ locale: 'es-419' });
  expect(spanish.dose(3.3, 0.1)).toBe('3.3 mL');
  expect(spanish.volume(1893)).toBe('1\u00a0893 mL');
  expect(spanish.number(1050)).toBe('1\u00a0050');
  expect(spanish.money({ currency: 'EUR', minor: 123_450 })).not.toContain(',');
  expect(showing().volume(1893)).toBe('1,893 mL');
});

test('in Spanish days are short, without commas or little words', () => {
  const spanish = showing({ locale: 'es-419', timeZone: 'UTC' });
  expect(spanish.day('2026-04-14T12:00:00Z')).toBe('mar 14 abr');
  expect(spanish.date('2026-04-30')).toBe('30 abr 2026');
  expect(spanish.dates('2026-06-01', '2026-06-21')).toMatch(/^1\s?–\s?21 jun 2026$/);
});
