import { expect, test } from 'vitest';
import { openStore } from '../../../server/store/open-store.ts';
import { createSettingsStore } from '../../../server/store/settings.ts';

const DEFAULTS = {
  face: 'dim',
  language: 'en',
  weightUnit: 'kg',
  person: 'Wren',
  syringeIds: [] as string[],
  safetyRead: false,
  firstStart: null,
  scaleCheckDays: 30,
  scaleCheckStops: false,
  wormSeason: 'high',
  eggsPerGram: null,
  offFeedSinceMs: null,
  currency: 'USD',
  latitude: null,
  voice: { language: 'en', voice: 'en-us', rate: 155, volume: 80, muted: false },
  ear: { mode: 'press', key: null, recording: false },
  paper: 'a6',
} as const;

test('a setting that was kept is read back and the others stay at their defaults', () => {
  const settings = createSettingsStore(openStore(':memory:'));
  settings.write('weightUnit', 'lb');
  settings.write('weightUnit', 'kg');
  settings.write('syringeIds', ['syringe-3-by-0.1']);
  expect(settings.read({ ...DEFAULTS, syringeIds: [] })).toEqual({
    ...DEFAULTS,
    syringeIds: ['syringe-3-by-0.1'],
  });
});

test('a row that no longer makes sense falls back to its default', () => {
  const db = openStore(':memory:');
  db.exec(`INSERT INTO settings VALUES ('face', '"purple"'), ('of-old', '1')`);
  expect(createSettingsStore(db).read({ ...DEFAULTS, syringeIds: [] }).face).toBe('dim');
});
