import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { newcomer } from '../../../core/herd/herd-animal.ts';
import { furnishShed, GOAT, standingOffer, testBarn } from '../../server/make/test-barn.ts';
import type { Figure } from '../table.ts';
import { bytesWritten } from './io.ts';

/** A busy day: so many animals weighed, half of them dosed and half let go, each with a look at its eyelids. */
const ANIMALS = 400;
const ALLOWED_MB = 20;

/** What a busy day writes to the card, with the log moved into the file at its end. */
export function busyDayFigures(): Figure[] {
  const folder = mkdtempSync(join(tmpdir(), 'bench-day-'));
  const kiosk = testBarn(join(folder, 'kiosk.sqlite'), (store) => {
    store.whole(() => {
      for (let i = 0; i < ANIMALS; i += 1)
        store.animals.add(newcomer({ ...GOAT, id: `goat-${i}`, name: `G ${i}`, tag: null }), 'Wren');
    });
    furnishShed(store);
  });
  const must = (wish: Parameters<typeof kiosk.send>[0]) => {
    const answer = kiosk.send(wish);
    if (!answer.ok) throw new Error(`${wish.type} was refused: ${answer.code}`);
  };
  try {
    kiosk.store.checkpoint();
    const before = bytesWritten();
    must({ type: 'take-jug', jugId: 'jug-1' });
    must({ type: 'prove-jug', jugId: 'jug-1', deliberate: true });
    for (let i = 0; i < ANIMALS; i += 1) {
      const animalId = `goat-${i}`;
      const scored = { eyelid: 3, body: 2.5, soiling: null, jaw: null, coat: null } as const;
      must({ type: 'score', animalId, scored });
      kiosk.weigh(0, 2000);
      must({ type: 'pick-animal', animalId });
      kiosk.weigh(15_400, 5000);
      if (i % 2 === 0) must({ type: 'give', offerId: standingOffer(kiosk).id, outcome: 'whole' });
      else must({ type: 'skip', reason: 'later' });
      kiosk.weigh(0, 3000);
    }
    kiosk.store.checkpoint();
    const megabytes = (bytesWritten() - before) / 2 ** 20;
    const past = megabytes > ALLOWED_MB ? `, past the goal of ${ALLOWED_MB} MB` : '';
    return [
      {
        what: `a day of ${ANIMALS} animals, written to the card`,
        ratio: megabytes / ALLOWED_MB,
        against: `the ${ALLOWED_MB} MB allowed`,
        raw: `${megabytes.toFixed(1)} MB, ${((megabytes * 1024) / ANIMALS).toFixed(1)} kB an animal${past}`,
      },
    ];
  } finally {
    kiosk.store.close();
    rmSync(folder, { recursive: true });
  }
}
