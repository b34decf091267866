import { flushSync, mount, unmount } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import Keypad from '../../kiosk/parts/Keypad.svelte';
import { LONGEST_NUMBER, withDigit, withoutLast } from '../../kiosk/parts/keypad-entry.ts';

const ondone = vi.fn();
let keypad: ReturnType<typeof mount>;

function element(testid: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(`[data-testid="${testid}"]`);
  if (found === null) throw new Error(`no ${testid}`);
  return found;
}

function type(...keys: string[]): void {
  for (const key of keys) {
    element(`key-${key}`).click();
    flushSync();
  }
}

beforeEach(() => {
  ondone.mockClear();
  document.body.replaceChildren();
  keypad = mount(Keypad, { target: document.body, props: { title: 'Number', ondone } });
  flushSync();
});

afterEach(async () => {
  await unmount(keypad);
});

test('digits join in the order of the taps, a leading zero stays', () => {
  type('0', '4', '1', '7', 'done');
  expect(element('keypad-entry').textContent).toBe('0417');
  expect(ondone.mock.calls.map(([entry]) => entry)).toEqual(['0417']);
});

test('erase takes the last digit, and nothing is left to erase or to finish in the end', () => {
  type('4', '2', 'erase');
  expect(element('keypad-entry').textContent).toBe('4');
  type('erase');
  expect(element('keypad-entry').textContent).toBe('–');
  expect(element('key-erase')).toHaveProperty('disabled', true);
  type('done');
  expect(ondone).not.toHaveBeenCalled();
});

test('an entry grows no longer than a number may be', () => {
  const full = '1'.repeat(LONGEST_NUMBER);
  expect(withDigit(full, '2')).toBe(full);
  expect(withDigit('', '0')).toBe('0');
  expect(withoutLast('')).toBe('');
});
