import { expect, test } from 'vitest';
import { examplesOf } from '../../../core/speech/examples.ts';
import { commandFrom, interpret } from '../../../core/speech/interpret.ts';
import { mayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { asleep, WAKE_WORDS } from '../../../core/speech/wake.ts';
import { sceneAt } from './hearing-scene.ts';

const wake = WAKE_WORDS.join(' ');
const heardAsleep = (state: Parameters<typeof sceneAt>[0], said: string) => {
  const scene = sceneAt(state);
  const command = commandFrom(said.split(' '), asleep(mayBeHeard(scene)));
  return command === null ? null : interpret(command, scene);
};

test('asleep it hears its wake phrase, alone or before what may be said now, and nothing else', () => {
  expect(heardAsleep('visit: empty', wake)).toEqual({ ok: true, wish: { type: 'wake' } });
  expect(heardAsleep('visit: empty', `${wake} tag four one seven`)).toEqual({
    ok: true,
    wish: { type: 'pick-animal', animalId: 'ella' },
  });
  expect(heardAsleep('visit: empty', 'tag four one seven')).toBeNull();
  expect(heardAsleep('offered', `${wake} tag four one seven`)).toBeNull();
});

test('asleep no dose is read back, not even after the wake phrase', () => {
  expect(asleep(mayBeHeard(sceneAt('offered'))).given).toBeNull();
  expect(heardAsleep('offered', `${wake} given three point three mils`)).toBeNull();
});

test('examples are few: what differs in a number or name alone is one of them, in the order of what matters', () => {
  const waiting = examplesOf(mayBeHeard(sceneAt('visit: who only')));
  expect(waiting.filter(({ group }) => group === 'animal')).toEqual([
    { group: 'animal', say: 'tag …' },
    { group: 'animal', say: 'animal …' },
  ]);
  expect(waiting.filter(({ group }) => group === 'score').map(({ say }) => say)).toContain('eyelid score …');
  const offered = examplesOf(mayBeHeard(sceneAt('offered')));
  expect(offered[0]).toEqual({ group: 'given', say: 'given … mils' });
  expect(examplesOf(asleep(mayBeHeard(sceneAt('offered')))).map(({ say }) => say)).toEqual([
    wake,
    `${wake} …`,
  ]);
  for (const examples of [waiting, offered]) expect(examples.length).toBeLessThan(30);
});
