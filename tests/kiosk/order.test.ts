import { expect, test } from 'vitest';
import { pageOf } from '../../kiosk/parts/pages.ts';
import { openCaution } from '../../kiosk/platform/caution-order.ts';
import { inLikelyOrder } from '../../kiosk/platform/likely-order.ts';
import { HERD } from './preview/base-state.ts';

const stop = { code: 'same-active-today', strength: 'stop', values: {} } as const;
const milk = { code: 'milk-time-unknown', strength: 'ask', values: {} } as const;
const high = { code: 'interval-crosses-ceiling', strength: 'ask', values: {} } as const;
const note = { code: 'extra-label', strength: 'note', values: {} } as const;

test('a stop comes before every ask, wherever it stands', () => {
  expect(openCaution([milk, stop, high], [])).toEqual({ caution: stop, at: 0, of: 2 });
});

test('asks come one at a time, and those accepted are passed', () => {
  expect(openCaution([milk, high, note], [])).toEqual({ caution: milk, at: 1, of: 2 });
  expect(openCaution([milk, high, note], ['milk-time-unknown'])).toEqual({ caution: high, at: 2, of: 2 });
});

test('notes alone hold nothing up', () => {
  expect(openCaution([note], [])).toMatchObject({ caution: null });
});

test('the likely animals come first in the order given, the others by name', () => {
  const names = inLikelyOrder(HERD, ['a5', 'a2']).map(({ name }) => name);
  expect(names.slice(0, 3)).toEqual(['Thistle', 'Juniper', '417']);
  expect(new Set(names).size).toBe(HERD.length);
});

test('pages cut a list into pieces and never run past its ends', () => {
  const all = [1, 2, 3, 4, 5];
  expect(pageOf(all, 0, 2)).toEqual({ items: [1, 2], page: 0, pages: 3 });
  expect(pageOf(all, 2, 2)).toEqual({ items: [5], page: 2, pages: 3 });
  expect(pageOf(all, 9, 2)).toEqual({ items: [5], page: 2, pages: 3 });
  expect(pageOf(all, -1, 2).page).toBe(0);
  expect(pageOf([], 3, 2)).toEqual({ items: [], page: 0, pages: 1 });
});
