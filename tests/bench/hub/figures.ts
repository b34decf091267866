import type { Figure } from '../table.ts';
import { startRunningHub } from './machines.ts';
import { manyFigures } from './many-figures.ts';
import { pushFigures } from './push.ts';
import { waitingFigures } from './waiting.ts';
import { wholeFarmFigures } from './whole-farm.ts';

/** Kiosks and a hub on PostgreSQL, with what goes wrong between them. */
export async function hubFigures(): Promise<Figure[]> {
  let hub = await startRunningHub();
  try {
    const figures = [...(await pushFigures(hub)), ...(await wholeFarmFigures(hub))];
    const many = await manyFigures(hub);
    hub = many.hub;
    return [...figures, ...many.figures, ...(await waitingFigures())];
  } finally {
    await hub.stop(true);
  }
}
