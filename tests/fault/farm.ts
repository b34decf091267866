import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { v7 as uuidv7 } from 'uuid';
import { seedDemoFarm } from '../../server/demo/demo-farm.ts';
import { createStore } from '../../server/store/store.ts';
import { type KioskProcess, startKiosk } from '../process/kiosk-process.ts';

/** A data folder of an invented farm at real work, with no scale plugged in: what starts on it is no demo. */
export function farmFolder(folder = mkdtempSync(join(tmpdir(), 'fault-'))): string {
  writeFileSync(join(folder, 'kiosk.json'), '{"people": ["Wren"]}');
  const store = createStore(databaseOf(folder));
  seedDemoFarm(store, Date.now(), uuidv7);
  store.close();
  return folder;
}

/** The database of a data folder. */
export function databaseOf(folder: string): string {
  return join(folder, 'byreside.sqlite');
}

/** Starts the built kiosk on a data folder. */
export function startOn(folder: string, env: Record<string, string> = {}): Promise<KioskProcess> {
  return startKiosk({ BYRESIDE_DATA: folder, ...env });
}

/** Ends a kiosk at once, as a pulled plug would, and waits until it is gone. */
export function kill({ child }: KioskProcess, signal: NodeJS.Signals = 'SIGKILL'): Promise<void> {
  return new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) return resolve();
    child.once('exit', () => resolve());
    child.kill(signal);
  });
}
