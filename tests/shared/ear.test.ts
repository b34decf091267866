import { expect, test } from 'vitest';
import { EarSettings, EarView, USUAL_EAR } from '../../shared/ear.ts';
import { ClientMessage, ServerMessage } from '../../shared/message.ts';
import { offView } from '../server/make/off-view.ts';

const takes = (message: unknown) => ClientMessage.safeParse(message).success;

test('a microphone tells its format, or that it is not open and why', () => {
  expect(takes({ type: 'microphone', rate: 48_000, channels: 2 })).toBe(true);
  expect(takes({ type: 'microphone', rate: null, why: 'blocked' })).toBe(true);
  expect(takes({ type: 'microphone', rate: 48_000 })).toBe(false);
  expect(takes({ type: 'microphone', rate: null })).toBe(false);
  expect(takes({ type: 'microphone', rate: 4000, channels: 1 })).toBe(false);
  expect(takes({ type: 'microphone', rate: 44_100.5, channels: 1 })).toBe(false);
  expect(takes({ type: 'microphone', rate: 44_100, channels: 9 })).toBe(false);
});

test('talking begins and ends', () => {
  expect(takes({ type: 'talk', on: true })).toBe(true);
  expect(takes({ type: 'talk' })).toBe(false);
});

test('a footswitch is named by the code of its key and by nothing else', () => {
  expect(EarSettings.safeParse({ ...USUAL_EAR, key: 'NumpadEnter' }).success).toBe(true);
  expect(EarSettings.safeParse({ ...USUAL_EAR, key: '' }).success).toBe(false);
  expect(EarSettings.safeParse({ ...USUAL_EAR, key: '<b>' }).success).toBe(false);
});

test('what is asked of a page aloud is a screen or the question what happened, never a dose', () => {
  const wish = (wish: unknown) => ServerMessage.safeParse({ type: 'spoken-wish', wish }).success;
  expect(wish({ type: 'screen', screen: 'day-book' })).toBe(true);
  expect(wish({ type: 'undo', treatmentId: 't' })).toBe(true);
  expect(wish({ type: 'give', offerId: 'o', outcome: 'whole' })).toBe(false);
});

test('without an engine the view is whole and says so, unless nobody wants to be heard', () => {
  expect(EarView.parse(offView(USUAL_EAR, 0)).trouble).toBe('no-engine');
  expect(EarView.parse(offView({ ...USUAL_EAR, mode: 'off' }, 0)).trouble).toBeNull();
});
