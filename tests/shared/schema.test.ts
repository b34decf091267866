import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { OfferView, TreatmentView } from '../../shared/dose.ts';
import { Intent } from '../../shared/intent.ts';
import { ServerMessage } from '../../shared/message.ts';
import { KioskState } from '../../shared/state.ts';
import { INTENTS } from './make.ts';

describe.each([
  ['Intent', Intent],
  ['KioskState', KioskState],
  ['TreatmentView', TreatmentView],
  ['OfferView', OfferView],
] as const)('the JSON Schema of %s', (_, schema) => {
  const made = z.toJSONSchema(schema);

  test('can be made, and is plain JSON', () => {
    expect(JSON.parse(JSON.stringify(made))).toEqual(made);
    expect(made.$schema).toContain('json-schema.org');
  });

  test('allows no other keys than those named', () => {
    const objects: { type?: unknown; properties?: unknown; additionalProperties?: unknown }[] = [];
    const walk = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return;
      if ('properties' in value && 'type' in value && value.type === 'object') objects.push(value);
      for (const part of Object.values(value)) walk(part);
    };
    walk(made);
    expect(objects.length).toBeGreaterThan(0);
    for (const object of objects) expect(object.additionalProperties).toBe(false);
  });
});

test('the schema of Intent names every intent', () => {
  const text = JSON.stringify(z.toJSONSchema(Intent));
  for (const type of Object.keys(INTENTS)) expect(text).toContain(`"const":"${type}"`);
  expect(Intent.options).toHaveLength(Object.keys(INTENTS).length);
});

describe('what the server sends', () => {
  test('a patch may carry any part of the state, and no other', () => {
    expect(ServerMessage.safeParse({ type: 'patch', seq: 1, changes: { demo: true } }).success).toBe(true);
    expect(ServerMessage.safeParse({ type: 'patch', seq: 1, changes: { dose: 3 } }).success).toBe(false);
    expect(ServerMessage.safeParse({ type: 'patch', seq: -1, changes: {} }).success).toBe(false);
  });

  test('a greeting of another protocol is refused', () => {
    expect(
      ServerMessage.safeParse({
        type: 'hello',
        protocol: 1,
        bootId: 'b',
        page: null,
        visitor: { kind: 'board' },
      }).success,
    ).toBe(true);
    expect(
      ServerMessage.safeParse({
        type: 'hello',
        protocol: 2,
        bootId: 'b',
        page: null,
        visitor: { kind: 'board' },
      }).success,
    ).toBe(false);
  });
});

describe('the platform in the state', () => {
  const platform = {
    link: 'ready',
    live: 40_000,
    held: null,
    uncertainty: null,
    verdict: 'settling',
    division: 50,
  };
  const accepts = (over: object): boolean =>
    KioskState.shape.platform.safeParse({ ...platform, ...over }).success;

  test('shows a number or nothing, and a reading below zero is a number', () => {
    expect([{}, { live: null }, { live: -50 }].map(accepts)).toEqual([true, true, true]);
    expect([{ live: Number.NaN }, { live: '40 kg' }, { live: undefined }].map(accepts)).toEqual([
      false,
      false,
      false,
    ]);
  });

  test('knows the six states of a link and no other', () => {
    for (const link of ['absent', 'opening', 'settling', 'ready', 'silent', 'lost']) {
      expect(accepts({ link })).toBe(true);
    }
    expect(accepts({ link: 'open' })).toBe(false);
  });
});
