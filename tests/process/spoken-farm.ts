import { join } from 'node:path';
import { newcomer } from '../../core/herd/herd-animal.ts';
import { grams } from '../../core/quantity/mass.ts';
import { REAL_DATABASE } from '../../server/config/load.ts';
import { createStore } from '../../server/store/store.ts';
import { makeJug } from '../core/make/jug.ts';
import { makeScaleCheck } from '../core/make/scale-check.ts';

const HOUR = 3_600_000;
/** What the jug weighs on the bench: itself, water and powder. */
export const JUG_GRAMS = 1234;
/** Sheep that are called by their numbers. */
export const SPOKEN = [
  { name: '417', kilograms: 62 },
  { name: '605', kilograms: 48 },
  { name: '2056', kilograms: 71 },
  { name: '392', kilograms: 39 },
] as const;
/** A sheep that is known by her tag. */
export const BY_WAND = { name: 'Bramble', tag: '998000000000707', kilograms: 55 } as const;

/** A data folder with five sheep, one jug that the bench knows by its weight, and all that a dose needs. */
export function furnish(data: string): void {
  const store = createStore(join(data, REAL_DATABASE));
  const now = Date.now();
  const sheep = { species: 'sheep', class: 'female', inMilk: false } as const;
  const rest = { bornAtMs: null, bredAtMs: null, malesRemovedAtMs: null, lastWeight: null } as const;
  store.whole(() => {
    for (const { name } of SPOKEN)
      store.animals.add(newcomer({ id: `sheep-${name}`, name, tag: null, ...sheep, ...rest }), 'Kim');
    store.animals.add(
      newcomer({ id: 'bramble', name: BY_WAND.name, tag: BY_WAND.tag, ...sheep, ...rest }),
      'Kim',
    );
    store.jugs.add(
      makeJug({
        id: 'jug-1',
        number: 1,
        mixedAtMs: now - HOUR,
        useByMs: now + 11 * HOUR,
        weighed: {
          vesselId: 'vessel-a',
          letter: 'A',
          empty: grams(250),
          contents: grams(JUG_GRAMS - 250),
          uncertainty: grams(1),
        },
      }),
    );
    store.approvals.approve({
      regimenId: 'levamisole-sheep',
      by: 'Kim',
      direction: 'label',
      atMs: now - HOUR,
      figures: null,
      vet: null,
      targetMgPerKg: null,
      meat: null,
      milk: null,
    });
    store.settings.write('syringeIds', ['syringe-12-by-0.2']);
    store.scaleChecks.add(makeScaleCheck(20_000, { atMs: now - HOUR }));
  });
  store.close();
}
