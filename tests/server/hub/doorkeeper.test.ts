import { expect, test } from 'vitest';
import { Doorkeeper } from '../../../server/hub/doorkeeper.ts';

const claim = (credential: string, key = 'k') => ({ farm: 'hill', credential, key });

function asked(
  door: Doorkeeper,
  sender: string,
  who: ReturnType<typeof claim> | null,
  times: number,
): number {
  return Array.from({ length: times }, () => door.mayAsk(sender, who)).filter(Boolean).length;
}

test('a kiosk may ask in bursts, and no more than its pace for long; another is not held up by it', () => {
  let nowMs = 0;
  const door = new Doorkeeper(() => nowMs);
  door.letIn(claim('north'));
  door.letIn(claim('south'));
  expect(asked(door, '10.0.0.1', claim('north'), 400)).toBe(300);
  expect(asked(door, '10.0.0.1', claim('south'), 10)).toBe(10);
  nowMs += 1000;
  expect(asked(door, '10.0.0.1', claim('north'), 400)).toBe(30);
});

test('whoever is turned away again and again waits, but not the kiosks behind the same address', () => {
  let nowMs = 0;
  const door = new Doorkeeper(() => nowMs);
  door.letIn(claim('north'));
  let tries = 0;
  for (; door.mayAsk('10.0.0.1', claim(`guess-${tries}`)) && tries < 1000; tries += 1)
    door.turnedAway('10.0.0.1');
  expect(tries).toBe(30);
  expect(door.mayAsk('10.0.0.1', null)).toBe(false);
  expect(door.mayAsk('10.0.0.1', claim('north'))).toBe(true);
  expect(door.mayAsk('10.0.0.1', claim('north', 'another key'))).toBe(false);
  expect(door.mayAsk('10.0.0.2', claim('guess'))).toBe(true);
  nowMs += 2000;
  expect(asked(door, '10.0.0.1', claim('guess'), 1)).toBe(1);
});
