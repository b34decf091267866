import { createRawSnippet, flushSync, mount, unmount } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import HeldPlate from '../../kiosk/parts/HeldPlate.svelte';

const onhold = vi.fn();
let plate: ReturnType<typeof mount>;
let button: HTMLButtonElement;

function fire(kind: string, pointerId = 1): void {
  button.dispatchEvent(new PointerEvent(kind, { pointerId, bubbles: true }));
  flushSync();
}

function key(kind: string, name: string, repeat = false): void {
  button.dispatchEvent(new KeyboardEvent(kind, { key: name, repeat, bubbles: true }));
}

beforeEach(() => {
  vi.useFakeTimers();
  onhold.mockClear();
  document.body.replaceChildren();
  const children = createRawSnippet(() => ({ render: () => '<b>press</b>' }));
  plate = mount(HeldPlate, { target: document.body, props: { testid: 'give', ms: 300, onhold, children } });
  flushSync();
  const found = document.querySelector('button');
  if (found === null) throw new Error('no button');
  button = found;
});

afterEach(async () => {
  await unmount(plate);
  vi.useRealTimers();
});

test('a finger that stays 300 ms presses once', () => {
  fire('pointerdown');
  vi.advanceTimersByTime(299);
  expect(onhold).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1);
  expect(onhold).toHaveBeenCalledOnce();
  vi.advanceTimersByTime(10_000);
  expect(onhold).toHaveBeenCalledOnce();
});

test.each(['pointerup', 'pointerleave', 'pointercancel'])('%s before the time is nothing at all', (kind) => {
  fire('pointerdown');
  vi.advanceTimersByTime(290);
  fire(kind);
  vi.advanceTimersByTime(10_000);
  expect(onhold).not.toHaveBeenCalled();
});

test('a tap, and a plain click, are nothing at all', () => {
  fire('pointerdown');
  fire('pointerup');
  button.click();
  vi.advanceTimersByTime(10_000);
  expect(onhold).not.toHaveBeenCalled();
});

test('short touches do not add up', () => {
  for (let drip = 0; drip < 20; drip += 1) {
    fire('pointerdown', drip);
    vi.advanceTimersByTime(100);
    fire('pointerup', drip);
  }
  expect(onhold).not.toHaveBeenCalled();
});

test('a drip beside the finger neither ends its press nor starts another', () => {
  fire('pointerdown', 1);
  vi.advanceTimersByTime(100);
  fire('pointerdown', 2);
  fire('pointerup', 2);
  vi.advanceTimersByTime(200);
  expect(onhold).toHaveBeenCalledOnce();
  vi.advanceTimersByTime(1000);
  expect(onhold).toHaveBeenCalledOnce();
});

function touch(pointerId: number, size: number, where: EventTarget = button): void {
  where.dispatchEvent(
    new PointerEvent('pointerdown', { pointerId, width: size, height: size, bubbles: true }),
  );
  flushSync();
}

test('a touch as wide as a palm is no press, one as wide as a gloved finger is', () => {
  touch(1, 180);
  vi.advanceTimersByTime(1000);
  expect(onhold).not.toHaveBeenCalled();
  fire('pointerup', 1);
  touch(2, 120);
  vi.advanceTimersByTime(300);
  expect(onhold).toHaveBeenCalledOnce();
});

test.each(['on the control', 'beside it'])('a palm in two places, the second %s, is no press', (where) => {
  touch(1, 20);
  vi.advanceTimersByTime(30);
  touch(2, 20, where === 'beside it' ? document.body : button);
  vi.advanceTimersByTime(1000);
  expect(onhold).not.toHaveBeenCalled();
});

test('a palm whose first place is beside the control is no press', () => {
  touch(1, 20, document.body);
  vi.advanceTimersByTime(30);
  touch(2, 20);
  vi.advanceTimersByTime(1000);
  expect(onhold).not.toHaveBeenCalled();
});

test('a hand that rests on the panel since before does not hinder a finger', () => {
  touch(1, 20, document.body);
  vi.advanceTimersByTime(500);
  touch(2, 20);
  vi.advanceTimersByTime(300);
  expect(onhold).toHaveBeenCalledOnce();
});

test('a finger that leaves and comes back starts from nothing', () => {
  fire('pointerdown');
  vi.advanceTimersByTime(200);
  fire('pointerleave');
  fire('pointerdown');
  vi.advanceTimersByTime(200);
  expect(onhold).not.toHaveBeenCalled();
  vi.advanceTimersByTime(100);
  expect(onhold).toHaveBeenCalledOnce();
});

test('the filling shows only while the finger stays', () => {
  expect(button.dataset['holding']).toBe('false');
  fire('pointerdown');
  expect(button.dataset['holding']).toBe('true');
  expect(button.style.getPropertyValue('--hold')).toBe('300ms');
  fire('pointerup');
  expect(button.dataset['holding']).toBe('false');
});

test('a held key works like a finger, and a repeating one counts once', () => {
  key('keydown', ' ');
  key('keydown', ' ', true);
  vi.advanceTimersByTime(300);
  key('keydown', ' ', true);
  vi.advanceTimersByTime(1000);
  expect(onhold).toHaveBeenCalledOnce();
  key('keyup', ' ');
  key('keydown', 'a');
  vi.advanceTimersByTime(1000);
  expect(onhold).toHaveBeenCalledOnce();
});
