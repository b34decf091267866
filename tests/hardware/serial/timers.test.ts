import { describe, expect, it } from 'vitest';
import { systemTimers } from '../../../hardware/serial/timers.ts';

describe('the system timers', () => {
  it('run once, not at once and not before their time', async () => {
    const timers = systemTimers();
    const from = timers.now();
    let runs = 0;
    const at = await new Promise<number>((resolve) => {
      timers.set(() => {
        runs += 1;
        resolve(timers.now());
      }, 30);
      expect(runs).toBe(0);
    });
    expect(at - from).toBeGreaterThanOrEqual(29);
    expect(runs).toBe(1);
  });

  it('do not run once cleared', async () => {
    const timers = systemTimers();
    let ran = false;
    timers.clear(
      timers.set(() => {
        ran = true;
      }, 5),
    );
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(ran).toBe(false);
  });
});
