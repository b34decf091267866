import { SHIPPED } from '../../core/formulary/shipped.ts';
import type { AnimalClass, Species } from '../../core/herd/animal.ts';
import { newcomer } from '../../core/herd/herd-animal.ts';
import { figuresOf } from '../../core/medicine/approval.ts';
import { liquidById, regimenById } from '../../core/medicine/formulary.ts';
import { openBottle } from '../../core/mixing/bottle.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import { DAY_MS } from '../../core/moment.ts';
import { pounds } from '../../core/quantity/mass.ts';
import { millilitres } from '../../core/quantity/volume.ts';
import type { Store } from '../store/store.ts';
import { demoCheck } from './demo-check.ts';

/** The demo's herd: an invented farm. Name, species, class, in milk, last weight in pounds, end of the tag number. */
const HERD: readonly (readonly [string, Species, AnimalClass, boolean, number, number])[] = [
  ['Thistle', 'goat', 'young', false, 33, 101],
  ['Bramble', 'goat', 'female', true, 128, 102],
  ['Juniper', 'goat', 'female', true, 117, 103],
  ['Clover', 'goat', 'female', false, 104, 104],
  ['Burdock', 'goat', 'male', false, 176, 105],
  ['Sorrel', 'goat', 'young', false, 29, 106],
  ['Nettle', 'goat', 'young', false, 24, 107],
  ['Yarrow', 'goat', 'castrate', false, 92, 108],
  ['Fern', 'sheep', 'female', false, 148, 109],
  ['Moss', 'sheep', 'female', false, 139, 110],
  ['Heather', 'sheep', 'young', false, 51, 111],
  ['Bracken', 'sheep', 'male', false, 192, 112],
];

/** Where the demo's tags come from: a manufacturer code no maker was given when this was written, from memory. */
const TAG_PREFIX = '998000000000';

/** The syringes on the demo's shelf. */
const SYRINGES = [
  'syringe-1-by-0.01',
  'syringe-3-by-0.1',
  'syringe-6-by-0.1',
  'syringe-12-by-0.2',
  'syringe-20-by-1',
];

/** What the demo's invented veterinarian approved, with days for meat and milk. */
const APPROVED = [
  ['levamisole-goat', 10, 12],
  ['levamisole-sheep', 10, null],
  ['fenbendazole-goat', 6, 5],
] as const;

/** A bottle of fenbendazole opened two days ago, good until its days open are over. */
function demoBottle(id: string, wallMs: number): Jug {
  const found = liquidById(SHIPPED, 'fenbendazole-100');
  if (found === undefined) throw new Error('the demo opens a liquid that does not ship');
  const year = new Date(wallMs).getUTCFullYear() + 1;
  return openBottle({
    ...found,
    id,
    number: 1,
    volume: millilitres(1000),
    expiry: { year, month: 12 },
    now: { uptimeMs: 0, wallMs: wallMs - 2 * DAY_MS },
    timeZone: 'UTC',
    by: 'Keeper',
    clockTrusted: true,
  });
}

/** Fills an empty demo database: herd, syringes, checked scales, and the approvals of its invented veterinarian. */
export function seedDemoFarm(store: Store, wallMs: number, newId: () => string): void {
  if (store.animals.all().length > 0) return;
  store.whole(() => {
    for (const [name, species, kind, inMilk, weight, tagEnd] of HERD) {
      const animal = newcomer({
        id: newId(),
        name,
        species,
        class: kind,
        tag: `${TAG_PREFIX}${tagEnd}`,
        inMilk,
        bornAtMs: null,
        bredAtMs: null,
        malesRemovedAtMs: null,
        lastWeight: { mass: pounds(weight), atMs: wallMs - 21 * DAY_MS },
      });
      store.animals.add(animal, 'the demo');
    }
    store.jugs.add(demoBottle(newId(), wallMs));
    store.settings.write('syringeIds', SYRINGES);
    store.settings.write('weightUnit', 'lb');
    store.scaleChecks.add(demoCheck('platform', newId(), wallMs - DAY_MS));
    store.scaleChecks.add(demoCheck('bench', newId(), wallMs - DAY_MS));
    for (const [regimenId, meatDays, milkDays] of APPROVED) {
      const found = regimenById(SHIPPED, regimenId);
      if (found === undefined) throw new Error(`the demo approves ${regimenId}, which does not ship`);
      store.approvals.approve({
        regimenId,
        figures: figuresOf(found.regimen),
        by: 'the demo’s invented vet',
        direction: 'veterinarian',
        vet: null,
        atMs: wallMs,
        targetMgPerKg: null,
        meat: { unit: 'days', count: meatDays },
        milk: milkDays === null ? null : { unit: 'days', count: milkDays },
      });
    }
  });
}
