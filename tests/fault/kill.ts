import { between, seededRandom } from '../../hardware/simulator/random.ts';
import { type Reckoning, reckon } from './books.ts';
import { databaseOf, farmFolder, kill, startOn } from './farm.ts';
import { acknowledged, type Ledger, post } from './ledger.ts';
import { begin, learnKids, work } from './round.ts';

/** What many kills came to. */
export interface KillReport extends Reckoning {
  readonly kills: number;
  /** Intents that were acknowledged, and those in flight when the kiosk died. */
  readonly acknowledged: number;
  readonly inFlight: number;
  /** Of those in flight, how many had been written all the same: each was answered as repeated and written once. */
  readonly writtenUnheard: number;
}

/** How long a kiosk is let work before it is killed, in milliseconds: from before its first write on. */
const LIVES = { least: 5, most: 350 } as const;

/**
 * Kills a working kiosk many times at random instants, sends what was not answered again as a page would, and holds the
 * disk against what was acknowledged after each kill and at the end.
 */
export async function killMany(kills: number, seed: number): Promise<KillReport> {
  const random = seededRandom(seed);
  const folder = farmFolder();
  const file = databaseOf(folder);
  const ledger: Ledger = new Map();
  let kiosk = await startOn(folder);
  const kids = await learnKids(kiosk.base, ledger, await begin(kiosk.base, ledger));
  const counts = { inFlight: 0, writtenUnheard: 0 };
  const found = { lost: new Set<string>(), miscounted: new Set<string>(), halves: new Set<string>() };
  const look = (exact: boolean) => {
    const reckoning = reckon(file, ledger, exact);
    for (const what of ['lost', 'miscounted', 'halves'] as const)
      for (const line of reckoning[what]) found[what].add(line);
  };
  for (let n = 1; n <= kills; n += 1) {
    const jugId = await begin(kiosk.base, ledger);
    const working = work(kiosk.base, ledger, jugId, kids);
    await new Promise((resolve) => setTimeout(resolve, between(random, LIVES.least, LIVES.most)));
    await kill(kiosk);
    await working;
    look(false);
    kiosk = await startOn(folder);
    for (const sent of ledger.values()) {
      if (sent.state !== 'unknown') continue;
      counts.inFlight += 1;
      const answer = await post(kiosk.base, sent);
      if ('repeated' in answer && answer.repeated === true) counts.writtenUnheard += 1;
    }
  }
  await kill(kiosk, 'SIGTERM');
  look(true);
  const total = ['give-group', 'correct', 'note-animal'].flatMap((type) => acknowledged(ledger, type)).length;
  return {
    kills,
    acknowledged: total,
    ...counts,
    lost: [...found.lost],
    miscounted: [...found.miscounted],
    halves: [...found.halves],
  };
}
