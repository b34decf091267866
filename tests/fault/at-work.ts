import { onTestFinished } from 'vitest';
import type { KioskProcess } from '../process/kiosk-process.ts';
import { kill, startOn } from './farm.ts';
import type { Ledger } from './ledger.ts';
import { begin, type Kid, learnKids } from './round.ts';

/** Starts the built kiosk on a data folder for as long as the test lasts. */
export async function startForTest(folder: string, env: Record<string, string> = {}): Promise<KioskProcess> {
  const kiosk = await startOn(folder, env);
  onTestFinished(() => kill(kiosk));
  return kiosk;
}

/** A kiosk at work: with a jug in hand and kids that are not dosed yet. */
export interface AtWork {
  readonly kiosk: KioskProcess;
  /** All that was sent to it. */
  readonly ledger: Ledger;
  readonly jugId: string;
  readonly kids: readonly [Kid, ...Kid[]];
}

/** Puts a kiosk to work. */
export async function putToWork(kiosk: KioskProcess): Promise<AtWork> {
  const ledger: Ledger = new Map();
  const jugId = await begin(kiosk.base, ledger);
  const [first, ...others] = await learnKids(kiosk.base, ledger, jugId);
  if (first === undefined) throw new Error('there is no kid');
  return { kiosk, ledger, jugId, kids: [first, ...others] };
}
