import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { newcomer } from '../../core/herd/herd-animal.ts';
import { KioskConfig } from '../../server/config/kiosk-config.ts';
import { NOTHING_OWN } from '../../server/formulary/own-medicines.ts';
import { openRecords } from '../../server/open-records.ts';
import type { Store } from '../../server/store/store.ts';
import { GOAT, testBarn } from './make/test-barn.ts';

/** Opens the records of a data folder, and gives where the first start stands then. */
function standsAt(dataFolder: string, leads: boolean, change: (store: Store) => void = () => {}) {
  const { store, memory } = openRecords({
    setup: { kind: 'real', config: KioskConfig.parse({}) },
    dataFolder,
    ownMedicines: NOTHING_OWN,
    leads,
    wallMs: 0,
    log: (message, error) => {
      throw new Error(message, { cause: error });
    },
  });
  change(store);
  store.close();
  return memory.settings.firstStart;
}

const fresh = () => mkdtempSync(join(tmpdir(), 'first-start-'));

test('a new farm is led through a first start, one with devices set for it is not', () => {
  expect(standsAt(fresh(), true)).toBe('language');
  expect(standsAt(fresh(), false)).toBeNull();
});

test('a farm that has animals is not led', () => {
  const folder = fresh();
  standsAt(folder, true, (store) => store.animals.add(newcomer(GOAT), 'Wren'));
  expect(standsAt(folder, true)).toBeNull();
});

test('it goes on where it was left, and once it is over it does not come back', () => {
  const folder = fresh();
  const file = join(folder, 'byreside.sqlite');
  standsAt(folder, true, (store) => store.settings.write('firstStart', 'bench'));
  expect(standsAt(folder, true)).toBe('bench');
  const kiosk = testBarn(file, () => {});
  expect(kiosk.barn.context.memory.settings.firstStart).toBe('bench');
  expect(kiosk.send({ type: 'first-start', step: 'wand', move: 'next' })).toMatchObject({
    code: 'wrong-state',
  });
  expect(kiosk.send({ type: 'first-start', step: 'bench', move: 'end' }).ok).toBe(true);
  kiosk.store.close();
  expect(standsAt(folder, true)).toBeNull();
});
