import { afterEach, expect, test } from 'vitest';
import { hintOf } from '../../kiosk/practice/hint.ts';
import { type MountedApp, mountApp } from './mount-app.ts';
import { SCENES } from './preview/scenes.ts';

let app: MountedApp;
afterEach(() => app.close());

const scene = (name: string) => {
  const found = SCENES.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no scene ${name}`);
  return found.state;
};

test('every screen of a practice round says that nothing is kept, and leads nowhere else', () => {
  app = mountApp(scene('practice-take'), 'day-book');
  expect(app.find('practice-sign')).not.toBeNull();
  expect(app.find('home')).toBeNull();
  expect(app.get('practice-hint').dataset['hint']).toBe('take');
  app.patch(scene('practice-give'));
  expect(app.find('practice-sign')).not.toBeNull();
  expect(app.get('practice-hint').dataset['hint']).toBe('give');
  expect(app.find('give')).not.toBeNull();
});

test('what leads out of the round says that it does not', () => {
  app = mountApp(scene('practice-take'));
  const before = app.text('practice-hint');
  app.click('mix-a-jug');
  expect(app.text('practice-hint')).not.toBe(before);
  expect(app.find('jug-tile')).not.toBeNull();
});

test('a tap does not end it, a held press does, and the screens of the farm come back', () => {
  app = mountApp(scene('practice-logged'));
  app.click('practice-end');
  expect(app.socket.intents).toEqual([]);
  app.patch({ practice: false });
  expect(app.find('practice-sign')).toBeNull();
});

test('after two doses it says that this was a round', () => {
  app = mountApp(scene('practice-logged'));
  const { round, dayBook } = scene('practice-logged');
  expect(hintOf({ round, dayBook: dayBook.slice(0, 1) })).toBe('logged');
  expect(hintOf({ round, dayBook: dayBook.slice(0, 2) })).toBe('done');
});
