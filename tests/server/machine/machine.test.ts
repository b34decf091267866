import { expect, test } from 'vitest';
import type { BoardSenses } from '../../../hardware/board/sensors.ts';
import { watchMachine } from '../../../server/machine/machine.ts';
import { ManualTimers } from '../../hardware/manual-timers.ts';

function watched(...told: readonly Partial<BoardSenses>[]) {
  const timers = new ManualTimers();
  const left = told.map(
    (each) => ({ supply: 'good', celsius: 50, limitCelsius: 80, ...each }) as BoardSenses,
  );
  const said: string[] = [];
  let changes = 0;
  const machine = watchMachine({
    sense: () => (left.length > 1 ? left.shift() : left[0]) as BoardSenses,
    timers,
    changed: () => (changes += 1),
    log: (message) => said.push(message),
  });
  return { machine, said, look: () => timers.advance(5000), changes: () => changes };
}

test('a supply that was low is remembered after it is good again', async () => {
  const { machine, look, said, changes } = watched({}, { supply: 'low' }, {});
  expect(machine.view()).toEqual({ supply: 'good', hot: false });
  await look();
  expect(machine.view().supply).toBe('low');
  await look();
  expect(machine.view().supply).toBe('was-low');
  expect(said).toEqual(['the supply of the board is low', 'the supply of the board is good']);
  expect(changes()).toBe(2);
});

test('a board is hot from its own limit on, and is never called hot without one', async () => {
  const { machine, look } = watched({ celsius: 79.9 }, { celsius: 80 }, { celsius: 120, limitCelsius: null });
  expect(machine.view().hot).toBe(false);
  await look();
  expect(machine.view().hot).toBe(true);
  await look();
  expect(machine.view().hot).toBe(false);
});

test('nothing is told while nothing is another', async () => {
  const { look, changes } = watched({ celsius: 50 }, { celsius: 51 }, { celsius: 52 });
  await look();
  await look();
  expect(changes()).toBe(0);
});

test('a stopped watch asks no more', async () => {
  const { machine, look } = watched({}, { supply: 'low' });
  machine.stop();
  await look();
  expect(machine.view().supply).toBe('good');
});
