import { describe, expect, test } from 'vitest';
import { SYRINGE_CATALOGUE } from '../../../core/dosing/syringe.ts';
import { NOT_GIVEN } from '../../../core/speech/fixed-phrases.ts';
import { mayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { makeJug } from '../make/jug.ts';
import { phaseAt } from '../make/round.ts';
import { roundAt, STATES, TREATMENT_ID } from '../make/round-states.ts';
import { hoursAgo } from '../make/time.ts';
import { sceneAt, sentences } from './hearing-scene.ts';

/** What may be heard in each state, by the kinds of phrases. */
const KINDS = {
  'no-jug': 'say-again screen take-jug',
  'prove-jug': 'jug-on-bench say-again screen',
  'visit: empty': 'animal say-again screen skip',
  'visit: weight only': 'animal say-again screen skip',
  'visit: who only': 'animal say-again score screen skip',
  'which-animal': 'animal say-again screen skip',
  'cautions: stop': 'say-again score screen skip',
  'cautions: ask': 'say-again score screen skip',
  offered: 'given say-again score screen skip',
  logging: 'say-again screen',
  logged: 'animal next say-again score screen undo',
} as const;

describe('what may be heard', () => {
  test.each(STATES)('%s', (state) => {
    const { phrases, given } = mayBeHeard(sceneAt(state));
    const kinds = new Set(phrases.map(({ command }) => command.kind as string));
    if (given !== null) kinds.add('given');
    expect([...kinds].sort().join(' ')).toBe(KINDS[state]);
  });

  test('undo only within its window', () => {
    const { undoUntil } = phaseAt(roundAt('logged'), 'logged');
    const at = (uptimeMs: number) =>
      sentences(mayBeHeard(sceneAt('logged', { now: { uptimeMs, wallMs: 0 } })).phrases);
    expect(at(undoUntil - 1)).toContain('undo last dose');
    expect(at(undoUntil)).not.toContain('undo last dose');
  });

  test('between two animals only those two can be called', () => {
    const { phrases } = mayBeHeard(sceneAt('which-animal'));
    expect(sentences(phrases).filter((said) => said.startsWith('animal '))).toEqual([
      'animal anna',
      'animal bella',
    ]);
  });

  test('an animal that left is not called', () => {
    const { animals } = sceneAt('visit: empty');
    const gone = animals.map((animal) =>
      animal.id === 'ella' ? { ...animal, life: { kind: 'sold', atMs: 0, by: 'Kim' } as const } : animal,
    );
    expect(sentences(mayBeHeard(sceneAt('visit: empty', { animals: gone })).phrases)).not.toContain(
      'animal ella',
    );
  });

  test('only jugs in life can be taken', () => {
    const jugs = [makeJug(), makeJug({ id: 'jug-8', number: 8, useByMs: hoursAgo(1) })];
    const { phrases } = mayBeHeard(sceneAt('no-jug', { jugs }));
    expect(sentences(phrases)).toContain('take jug number seven');
    expect(sentences(phrases)).not.toContain('take jug number eight');
  });

  test('the coat is scored in goats, the eyelid not in cattle', () => {
    const as = (species: 'sheep' | 'cattle') => {
      const scene = sceneAt('visit: who only');
      const animals = scene.animals.map((animal) => ({ ...animal, species }));
      return sentences(mayBeHeard({ ...scene, animals }).phrases).join('\n');
    };
    expect(as('sheep')).toContain('eyelid score three');
    expect(as('sheep')).not.toContain('coat');
    expect(as('cattle')).not.toContain('eyelid');
  });

  test('what a dose may be read back as depends on the syringe, never on the dose', () => {
    const { phase, ...scene } = sceneAt('offered');
    if (phase.step !== 'offered') throw new Error('no dose on offer');
    const by = (syringeId: string) => {
      const syringe = SYRINGE_CATALOGUE.find(({ id }) => id === syringeId);
      if (syringe === undefined) throw new Error('no such syringe');
      const dose = { ...phase.offer.dose, plan: { ...phase.offer.dose.plan, syringe } };
      return mayBeHeard({ ...scene, phase: { ...phase, offer: { ...phase.offer, dose } } }).given;
    };
    expect(by('syringe-60-by-1')).toEqual({ decimals: 1 });
    expect(by('syringe-6-by-0.1')).toEqual({ decimals: 1 });
    expect(by('syringe-1-by-0.01')).toEqual({ decimals: 2 });
  });
});

describe('what a kiosk may hear depends on more than the round', () => {
  const said = (state: Parameters<typeof sceneAt>[0], over: Parameters<typeof sceneAt>[1]) =>
    sentences(mayBeHeard(sceneAt(state, over)).phrases);

  test('no dose is read back where voice may not give', () => {
    expect(mayBeHeard(sceneAt('offered', { mayGive: false })).given).toBeNull();
  });

  test('no animal is called where the kiosk cannot say aloud whom it took', () => {
    expect(said('visit: empty', { aloud: true }).some((words) => words.startsWith('tag'))).toBe(true);
    expect(said('visit: empty', { aloud: false }).some((words) => /^(tag|animal) /.test(words))).toBe(false);
  });

  test('a dose is taken back only after it was asked aloud what happened, and only that dose', () => {
    const notGiven = sentences([NOT_GIVEN])[0];
    expect(said('logged', { asked: null })).not.toContain(notGiven);
    expect(said('logged', { asked: 'another' })).not.toContain(notGiven);
    expect(said('logged', { asked: TREATMENT_ID })).toContain(notGiven);
  });
});
