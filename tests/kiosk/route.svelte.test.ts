import { expect, test } from 'vitest';
import { pixelsPerMillimetre } from '../../kiosk/frame/panel-scale.ts';
import { doorOf, hashOf, outOf, placeFrom, Route } from '../../kiosk/frame/route.svelte.ts';
import { type EnrolQuestion, NOBODY, nextQuestion } from '../../kiosk/shed/enrolling.ts';

test.each([
  ['', { screen: 'home', path: [] }],
  ['#nowhere', { screen: 'home', path: [] }],
  ['#platform', { screen: 'platform', path: [] }],
  ['#shed/rules/levamisole-goat', { screen: 'shed', path: ['rules', 'levamisole-goat'] }],
])('the address "%s" leads to its place and back', (hash, place) => {
  expect(placeFrom(hash)).toEqual(place);
  expect(placeFrom(hashOf(placeFrom(hash)))).toEqual(place);
});

test('each step out closes what is open, then leads home', () => {
  const record = placeFrom('#day-book/t1/correct');
  expect([record, outOf(record), outOf(outOf(record)), outOf(outOf(outOf(record)))].map(doorOf)).toEqual([
    'back',
    'back',
    'home',
    null,
  ]);
});

test('a place is kept in the address, so that a reload comes back to it', () => {
  const route = new Route();
  route.go('shed', 'people');
  expect(placeFrom(location.hash)).toEqual({ screen: 'shed', path: ['people'] });
  expect(new Route().place).toEqual(route.place);
  route.out();
  expect(route.place).toEqual({ screen: 'shed', path: [] });
});

test('a millimetre is the panel’s own on the panel, and follows the window elsewhere', () => {
  const panel = { widthPx: 800, heightPx: 480, pxPerMm: 5.25 };
  expect(pixelsPerMillimetre(panel, 800, 480)).toBe(5.25);
  expect(pixelsPerMillimetre(panel, 1600, 960)).toBe(10.5);
  expect(pixelsPerMillimetre(panel, 720, 1280)).toBeCloseTo(4.725, 9);
  expect(pixelsPerMillimetre(panel, 0, 0)).toBe(5.25);
});

test('an animal is asked about until everything is known, milk only of grown females', () => {
  const asked: EnrolQuestion[] = [];
  let animal = NOBODY;
  for (const known of [{ species: 'goat' }, { class: 'female' }, { inMilk: true }, { name: '42' }] as const) {
    asked.push(nextQuestion(animal));
    animal = { ...animal, ...known };
  }
  expect([...asked, nextQuestion(animal)]).toEqual(['species', 'class', 'milk', 'number', 'tag']);
  expect(nextQuestion({ ...NOBODY, species: 'sheep', class: 'male' })).toBe('number');
});
