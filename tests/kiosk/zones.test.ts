import { expect, test } from 'vitest';
import { isTimeZone } from '../../core/dosing/local-time.ts';
import { allZones, cityOf, REGIONS, regionOf, stretchesOf, zonesOf } from '../../kiosk/settling/zones.ts';

test('a zone is read by its city, with the state where one is named', () => {
  expect(cityOf('Europe/Dublin')).toBe('Dublin');
  expect(cityOf('America/Indiana/Knox')).toBe('Knox, Indiana');
  expect(cityOf('America/Los_Angeles')).toBe('Los Angeles');
  expect(cityOf('UTC')).toBe('UTC');
});

test('every zone is in one part of the world, and found again in one stretch of it', () => {
  const zones = allZones();
  expect(zones.length).toBeGreaterThan(300);
  const found = REGIONS.flatMap((region) => stretchesOf(zonesOf(region, zones)).flat());
  expect([...found].sort()).toEqual([...zones].sort());
  expect(zones.every(isTimeZone)).toBe(true);
  expect(regionOf('UTC')).toBe('Other');
});

test('a long list is cut into at most nine stretches, one after the other', () => {
  const names = Array.from({ length: 100 }, (_, at) => `A/${String(at).padStart(3, '0')}`);
  const cut = stretchesOf(names);
  expect(cut.map(({ length }) => length)).toEqual([12, 12, 12, 12, 12, 12, 12, 12, 4]);
  expect(cut.flat()).toEqual(names);
  expect(stretchesOf(names.slice(0, 18))).toEqual([names.slice(0, 18)]);
});
