import { expect, test } from 'vitest';
import { applyMessage, CONNECTING, type Feed } from '../../kiosk/connection/apply-message.ts';
import { BASE } from './preview/base-state.ts';

const hello = {
  type: 'hello',
  protocol: 1,
  bootId: 'boot-1',
  page: null,
  visitor: { kind: 'board' },
} as const;
const snapshot = { type: 'snapshot', seq: 5, state: BASE } as const;

function live(): Extract<Feed, { status: 'live' }> {
  const feed = applyMessage(applyMessage(CONNECTING, hello), snapshot);
  if (feed.status !== 'live') throw new Error('not live');
  return feed;
}

test('a greeting and a snapshot make the feed live', () => {
  expect(live()).toEqual({ status: 'live', bootId: 'boot-1', seq: 5, state: BASE });
});

test('a greeting alone shows no state', () => {
  expect(applyMessage(CONNECTING, hello)).toEqual({ status: 'greeted', bootId: 'boot-1' });
});

test('a state before any greeting is a mismatch', () => {
  expect(applyMessage(CONNECTING, snapshot)).toEqual({ status: 'mismatch' });
  expect(applyMessage(CONNECTING, { type: 'patch', seq: 6, changes: {} })).toEqual({ status: 'mismatch' });
});

test('a patch replaces the parts it names, whole, and leaves the others', () => {
  const platform = { ...BASE.platform, live: 12_345 };
  const feed = applyMessage(live(), { type: 'patch', seq: 6, changes: { platform } });
  expect(feed).toMatchObject({ seq: 6, state: { ...BASE, platform } });
});

test('a part patched to null is null, not the old one', () => {
  const withProblem = applyMessage(live(), {
    type: 'patch',
    seq: 6,
    changes: { offer: null, problem: null },
  });
  expect(withProblem).toMatchObject({ state: { offer: null, problem: null } });
});

test('a patch from the past changes nothing', () => {
  const before = live();
  expect(applyMessage(before, { type: 'patch', seq: 5, changes: { demo: false } })).toBe(before);
});

test('a server that started anew greets and replaces everything', () => {
  const again = applyMessage(live(), { ...hello, bootId: 'boot-2' });
  expect(again).toEqual({ status: 'greeted', bootId: 'boot-2' });
  const state = { ...BASE, bootId: 'boot-2', jugs: [] };
  expect(applyMessage(again, { type: 'snapshot', seq: 0, state })).toEqual({
    status: 'live',
    bootId: 'boot-2',
    seq: 0,
    state,
  });
});

test.each([
  { type: 'pong' } as const,
  { type: 'answer', answer: { ok: true, id: 'i', repeated: false } } as const,
])('a $type leaves the feed as it is', (message) => {
  const before = live();
  expect(applyMessage(before, message)).toBe(before);
});
