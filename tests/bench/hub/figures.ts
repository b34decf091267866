import { printFigures } from '../table.ts';
import { startRunningHub } from './machines.ts';
import { manyFigures } from './many-figures.ts';
import { pushFigures } from './push.ts';
import { waitingFigures } from './waiting.ts';
import { wholeFarmFigures } from './whole-farm.ts';

/** Prints what it takes a new kiosk to take in a share of ten years, alone: the whole takes hours. */
export async function hubPullFigures(share: number): Promise<void> {
  const hub = await startRunningHub();
  try {
    printFigures('Kiosks and a hub: years of a farm', await wholeFarmFigures(hub, share));
  } finally {
    await hub.stop(true);
  }
}

/** Prints what kiosks and a hub on PostgreSQL come to, part by part, with what goes wrong between them. */
export async function hubFigures(): Promise<void> {
  let hub = await startRunningHub();
  try {
    printFigures('Kiosks and a hub: much at once', await pushFigures(hub));
    const many = await manyFigures(hub);
    hub = many.hub;
    printFigures('Kiosks and a hub: many kiosks', many.figures);
    printFigures('Kiosks and a hub: years of a farm', await wholeFarmFigures(hub));
    printFigures('Kiosks and a hub: a million events waiting', await waitingFigures());
  } finally {
    await hub.stop(true);
  }
}
