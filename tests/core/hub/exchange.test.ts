import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pullOnce, pushLacking } from '../../../core/hub/exchange.ts';
import { ModelHub, ModelKiosk } from './model.ts';

const KIOSKS = ['a', 'b', 'c'];

const which = fc.nat(KIOSKS.length - 1);
const step = fc.oneof(
  { weight: 6, arbitrary: fc.record({ do: fc.constant('tell' as const), kiosk: which }) },
  { weight: 6, arbitrary: fc.record({ do: fc.constant('meet' as const), kiosk: which }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('back-up' as const), kiosk: which }) },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('restore' as const), kiosk: which, told: fc.boolean() }),
  },
  { weight: 1, arbitrary: fc.constant({ do: 'back-up-hub' as const }) },
  { weight: 1, arbitrary: fc.constant({ do: 'restore-hub' as const }) },
);
const fate = fc.constantFrom(
  'arrives' as const,
  'arrives' as const,
  'lost' as const,
  'answer-lost' as const,
  'twice' as const,
);
const schedule = fc.record({
  steps: fc.array(step, { maxLength: 40 }),
  fates: fc.infiniteStream(fate),
  many: fc.integer({ min: 1, max: 4 }),
});

/** Exchanges until the line fails or nothing is left to exchange. */
async function meet(kiosk: ModelKiosk, hub: ModelHub): Promise<void> {
  try {
    for (;;) {
      const pulled = await pullOnce(kiosk, hub, 0);
      const heads = await pushLacking(kiosk, hub, pulled.heads);
      const lacks = [...heads].some(([life, head]) => head > (kiosk.heads().get(life) ?? 0));
      if (pulled.events.length + pulled.parted.length === 0 && !lacks) return;
    }
  } catch (error) {
    if (!String(error).includes('the line is cut')) throw error;
  }
}

async function run({ steps, fates, many }: { steps: Step[]; fates: Iterator<Fate>; many: number }) {
  const kiosks = KIOSKS.map((name) => new ModelKiosk(name, many));
  const hub = new ModelHub(many);
  const backups = kiosks.map((kiosk) => kiosk.backUp());
  let hubBackup = hub.backUp();
  let told = 0;
  // What nobody held any more once a disk was put back is lost for good, and is not asked for.
  let alive = new Set<string>();
  const holders = () => [hub, ...kiosks].flatMap((each) => each.ids());
  const outlived = () => {
    const held = new Set(holders());
    alive = new Set([...alive].filter((id) => held.has(id)));
  };
  for (const now of steps) {
    const kiosk = kiosks['kiosk' in now ? now.kiosk : 0] as ModelKiosk;
    hub.fate = () => fates.next().value;
    if (now.do === 'tell') {
      kiosk.tell(`e${++told}`);
      alive.add(`e${told}`);
    } else if (now.do === 'meet') await meet(kiosk, hub);
    else if (now.do === 'back-up') backups[now.kiosk] = kiosk.backUp();
    else if (now.do === 'restore')
      kiosk.restore(backups[now.kiosk] as ReturnType<ModelKiosk['backUp']>, now.told);
    else if (now.do === 'back-up-hub') hubBackup = hub.backUp();
    else hub.restore(hubBackup);
    outlived();
  }
  hub.fate = () => 'arrives';
  // Twice around: what the last kiosk told reaches the first.
  for (const kiosk of [...kiosks, ...kiosks, ...kiosks]) await meet(kiosk, hub);
  return { kiosks, hub, alive: [...alive].sort() };
}

type Fate = 'arrives' | 'lost' | 'answer-lost' | 'twice';
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;

describe('whatever is cut, lost, repeated, crashed or put back', () => {
  test('hub and kiosks come to hold the same events, each of them once, and none is lost', async () => {
    const runs = Number(process.env['HUB_SCHEDULES'] ?? 2000);
    await fc.assert(
      fc.asyncProperty(schedule, async (given) => {
        const { kiosks, hub, alive } = await run({ ...given, fates: given.fates[Symbol.iterator]() });
        for (const each of [hub, ...kiosks]) expect(each.ids()).toEqual(alive);
        for (const each of kiosks) expect(Object.fromEntries(each.heads())).toEqual(headsWithin(hub));
      }),
      { numRuns: runs },
    );
  }, 60_000);
});

const headsWithin = (hub: ModelHub) =>
  Object.fromEntries([...hub.lives].map(([life, events]) => [life, events.length]));

describe('by hand', () => {
  test('a card put back without a word tells what it wrote since under numbers of another life', async () => {
    const [kiosk, other, hub] = [new ModelKiosk('a', 10), new ModelKiosk('b', 10), new ModelHub(10)];
    kiosk.tell('one');
    const card = kiosk.backUp();
    kiosk.tell('two');
    await meet(kiosk, hub);
    kiosk.restore(card, false);
    kiosk.tell('two again');
    await meet(kiosk, hub);
    await meet(other, hub);
    expect(other.ids()).toEqual(['one', 'two', 'two again']);
    expect(kiosk.ids()).toEqual(other.ids());
    expect(other.lives.get('a-1')?.map(({ id }) => id)).toEqual(['one', 'two']);
    expect(other.lives.get('a-2')?.map(({ id }) => id)).toEqual(['two again']);
  });

  test('a hub put back to last night gets again what it lost, of a kiosk that is gone too', async () => {
    const [kiosk, other, hub] = [new ModelKiosk('a', 10), new ModelKiosk('b', 10), new ModelHub(10)];
    const night = hub.backUp();
    kiosk.tell('one');
    await meet(kiosk, hub);
    await meet(other, hub);
    hub.restore(night);
    await meet(other, hub);
    expect(hub.ids()).toEqual(['one']);
  });
});
