import { expect, test } from 'vitest';
import { fitOf, keepsUnproved, nextOf, shortPort } from '../../kiosk/setup/trial-next.ts';
import type { SetupView } from '../../shared/setup.ts';
import { onTrial } from './preview/setup-scenes.ts';

const RIGHT = { verdict: 'right', knownGrams: 1, shownGrams: 1, is: null, instead: null } as const;
const NEEDS = { proof: false, noTare: false, otherFormat: false };
const STEPS = { capacityGrams: null, divisionGrams: 50, by: 'keeper' as const, valuesSeen: 1, choices: [] };
type Trial = Extract<SetupView, { step: 'trial' }>;

test.each<[string, Partial<Trial>, ReturnType<typeof nextOf>, boolean]>([
  ['without a link', { link: 'silent' }, 'wait', false],
  ['without a number', { live: null }, 'wait', false],
  ['a sure format', {}, 'prove', true],
  ['a guessed unit', { needs: { ...NEEDS, proof: true } }, 'prove', false],
  [
    'another unit that fits',
    { proof: { ...RIGHT, verdict: 'other-unit', is: 'lb', instead: 2 } },
    'instead',
    false,
  ],
  [
    'a weight proved wrong',
    { proof: { ...RIGHT, verdict: 'wrong' }, needs: { ...NEEDS, proof: true } },
    'prove',
    false,
  ],
  ['proved, gross unknown', { proof: RIGHT, needs: { ...NEEDS, noTare: true } }, 'no-tare', false],
  ['never fit for animals', { needs: { ...NEEDS, otherFormat: true } }, 'other-format', false],
  ['proved, its steps unknown', { proof: RIGHT }, 'steps', false],
  ['proved, its steps told', { proof: RIGHT, facts: STEPS }, 'keep', false],
  ['a wand not waved', { role: 'wand', needs: { ...NEEDS, proof: true } }, 'wait', false],
  ['a wand read', { role: 'wand', tag: '982000123456789' }, 'keep', false],
])('the next thing to do with %s', (_what, changes, next, unproved) => {
  const trial = onTrial(changes);
  expect(nextOf(trial)).toBe(next);
  expect(keepsUnproved(trial)).toBe(unproved);
});

test('a port is named by what tells it from others', () => {
  expect(shortPort('/dev/serial/by-id/usb-Example_Serial_Adapter_A50285BI-if00-port0')).toBe(
    'Example Serial Adapter A50285BI',
  );
  expect(shortPort('/dev/serial/by-id/usb-Example_Wand_000418-if00')).toBe('Example Wand 000418');
  expect(shortPort('/dev/ttyUSB0')).toBe('ttyUSB0');
});

test('how well a format fits is told in three words', () => {
  expect([0.95, 0.6, 0.5, 0.1].map(fitOf)).toEqual(['well', 'well', 'partly', 'little']);
});
