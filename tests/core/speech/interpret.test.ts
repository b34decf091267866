import { describe, expect, test } from 'vitest';
import type { Command } from '../../../core/speech/command.ts';
import { canGoOn, commandFrom, interpret } from '../../../core/speech/interpret.ts';
import { mayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { offeredRound, offerOf } from '../make/round.ts';
import { OFFER_ID, type StateName, TREATMENT_ID } from '../make/round-states.ts';
import { sceneAt } from './hearing-scene.ts';

function say(state: StateName, said: string) {
  const scene = sceneAt(state);
  const command = commandFrom(said.split(' '), mayBeHeard(scene));
  return command === null ? null : interpret(command, scene);
}

const SHOWN = offerOf(offeredRound()).dose.plan.total.value;

describe('what a phrase asks for', () => {
  test.each<[StateName, string, object]>([
    ['no-jug', 'take jug number seven', { type: 'take-jug', jugId: 'jug-7' }],
    ['visit: empty', 'tag four one seven', { type: 'pick-animal', animalId: 'ella' }],
    ['visit: empty', 'tag four seventeen', { type: 'pick-animal', animalId: 'ella' }],
    ['visit: empty', 'animal bella', { type: 'pick-animal', animalId: 'bella' }],
    ['visit: empty', 'mixing screen', { type: 'screen', screen: 'jug' }],
    ['visit: empty', 'kiosk say again', { type: 'say-again' }],
    ['cautions: ask', 'skip sick animal', { type: 'skip', reason: 'sick' }],
    [
      'visit: who only',
      'eyelid score three',
      { type: 'score', animalId: 'anna', score: { sign: 'eyelid', step: 3 } },
    ],
    ['offered', 'tail score oh', { type: 'score', animalId: 'anna', score: { sign: 'soiling', step: 0 } }],
    [
      'logged',
      'body score three point five',
      { type: 'score', animalId: 'anna', score: { sign: 'body', step: 3.5 } },
    ],
    ['logged', 'next animal', { type: 'next' }],
    ['logged', 'undo last dose', { type: 'undo', treatmentId: TREATMENT_ID }],
  ])('%s: %s', (state, said, wish) => {
    expect(say(state, said)).toEqual({ ok: true, wish });
  });

  test.each<[StateName, string]>([
    ['visit: empty', 'given three point three mils'],
    ['visit: empty', 'next animal'],
    ['visit: empty', 'tag four one eight'],
    ['offered', 'tag four one seven'],
    ['offered', 'given'],
    ['offered', 'given point five mils'],
    ['offered', 'given three point three'],
    ['logged', 'skip until later'],
  ])('%s: "%s" is no phrase', (state, said) => {
    expect(say(state, said)).toBeNull();
  });
});

describe('a dose read back', () => {
  const interpreted = (volumeMl: number, state: StateName = 'offered') =>
    interpret({ kind: 'given', volumeMl }, sceneAt(state));

  test('gives the offer shown where it is the volume shown', () => {
    expect(interpreted(SHOWN)).toEqual({
      ok: true,
      wish: { type: 'give', offerId: OFFER_ID, outcome: 'whole' },
    });
  });

  test.each([SHOWN + 0.1, SHOWN - 0.1, SHOWN * 10, SHOWN / 10, 13, 30, 0])(
    '%d instead is refused',
    (saidMl) => {
      expect(interpreted(saidMl)).toEqual({
        ok: false,
        refusal: { why: 'wrong-volume', saidMl, shownMl: SHOWN },
      });
    },
  );

  test('where the offer has ended meanwhile it is refused', () => {
    expect(interpreted(SHOWN, 'visit: empty')).toEqual({ ok: false, refusal: { why: 'nothing-offered' } });
  });
});

test.each<[Command, StateName, string]>([
  [{ kind: 'undo' }, 'visit: empty', 'undo-over'],
  [{ kind: 'score', score: { sign: 'eyelid', step: 3 } }, 'visit: empty', 'no-animal'],
])('what the state has left behind is refused: %j', (command, state, why) => {
  const became = interpret(command, sceneAt(state));
  if (became.ok) throw new Error('it was done');
  expect(became.refusal.why).toBe(why);
});

describe('whether more words could follow', () => {
  const could = (state: StateName, said: string) => canGoOn(said.split(' '), mayBeHeard(sceneAt(state)));

  test('the start of a tag, and half a step of a score', () => {
    expect(could('visit: empty', 'tag four one')).toBe(true);
    expect(could('visit: empty', 'tag four one seven')).toBe(false);
    expect(could('offered', 'given three point three mils')).toBe(false);
    expect(could('offered', 'body score one')).toBe(true);
    expect(could('offered', 'eyelid score one')).toBe(false);
  });
});

describe('held against the state as it is when the speech ended', () => {
  const call: Command = { kind: 'animal', animalId: 'ella' };

  test('an animal called before a dose was on offer does not end it', () => {
    expect(interpret(call, sceneAt('visit: weight only'))).toMatchObject({ ok: true });
    expect(interpret(call, sceneAt('offered'))).toEqual({ ok: false, refusal: { why: 'moved-on' } });
  });

  test('the jug on the bench is the one asked about', () => {
    const wish = { type: 'prove-on-bench', jugId: 'jug-7' };
    expect(interpret({ kind: 'jug-on-bench' }, sceneAt('prove-jug'))).toEqual({ ok: true, wish });
    expect(interpret({ kind: 'jug-on-bench' }, sceneAt('no-jug'))).toMatchObject({ ok: false });
  });

  test('a dose never given is taken back only where that was asked', () => {
    const told: Command = { kind: 'not-given' };
    const wish = { type: 'not-given', treatmentId: TREATMENT_ID };
    expect(interpret(told, sceneAt('logged', { asked: TREATMENT_ID }))).toEqual({ ok: true, wish });
    expect(interpret(told, sceneAt('logged'))).toEqual({ ok: false, refusal: { why: 'moved-on' } });
    expect(interpret(told, sceneAt('offered'))).toEqual({ ok: false, refusal: { why: 'undo-over' } });
  });

  test('where voice may not give, a right read-back is refused too', () => {
    const given: Command = { kind: 'given', volumeMl: SHOWN };
    expect(interpret(given, sceneAt('offered', { mayGive: false }))).toEqual({
      ok: false,
      refusal: { why: 'not-by-voice' },
    });
  });
});
