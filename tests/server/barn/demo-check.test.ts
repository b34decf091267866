import { expect, test } from 'vitest';
import { checkStanding } from '../../../core/checking/standing.ts';
import { checkingOf, defaultSettings, loadMemory } from '../../../server/barn/memory.ts';
import { KioskConfig } from '../../../server/config/kiosk-config.ts';
import { seedDemoFarm } from '../../../server/demo/demo-farm.ts';
import { createStore } from '../../../server/store/store.ts';

test('the demo begins with both of its scales freshly checked', () => {
  const store = createStore(':memory:');
  const now = Date.UTC(2027, 3, 12, 12);
  let ids = 0;
  seedDemoFarm(store, now, () => `demo-${++ids}`);
  const memory = loadMemory(store, defaultSettings(KioskConfig.parse({})));
  for (const role of ['platform', 'bench'] as const) {
    expect(memory.scaleChecks[role]).toMatchObject({ role, verdict: 'passed', rough: false });
    expect(checkStanding(checkingOf(memory, role), now, true)).toBe('fresh');
  }
});
