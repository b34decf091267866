import { describe, expect, test } from 'vitest';
import { jugView } from '../../../server/view/jug-view.ts';
import { GOAT, standingOffer, testBarn } from '../make/test-barn.ts';

const BOTTLE = {
  type: 'open-bottle',
  presentationId: 'fenbendazole-100',
  volumeMl: 1000,
  expiry: { year: 2028, month: 3 },
} as const;
const APPROVAL = {
  type: 'approve',
  regimenId: 'fenbendazole-goat',
  direction: 'label',
  meatHours: null,
  milkHours: null,
} as const;

describe('a bottle', () => {
  test('stands beside the jugs, is taken in hand like one, and doses at the strength of its label', () => {
    const barn = testBarn();
    expect(barn.send(BOTTLE)).toMatchObject({ ok: true });
    expect(barn.send(APPROVAL)).toMatchObject({ ok: true });
    const [bottle] = barn.barn.context.memory.jugs;
    if (bottle === undefined) throw new Error('no bottle');
    expect(jugView(bottle, barn.clock.wallMs, barn.barn.context.memory.formulary)).toMatchObject({
      form: 'bottle',
      number: 2,
      strengthMgPerMl: 100,
      remainingMl: 1000,
      life: 'in-life',
    });
    barn.send({ type: 'take-jug', jugId: bottle.id });
    barn.send({ type: 'prove-jug', jugId: bottle.id, deliberate: false });
    barn.weigh(0, 1000);
    barn.send({ type: 'read-tag', tag: GOAT.tag ?? '' });
    barn.weigh(40_000, 3000);
    for (const code of ['weight-far-from-last', 'weight-pounds-for-kilograms'] as const)
      barn.send({ type: 'accept', code });
    const offer = standingOffer(barn);
    expect(offer.dose.exact.value).toBeCloseTo(2, 1);
    expect(offer.regimen.target.value).toBe(5);
    barn.send({ type: 'give', offerId: offer.id, outcome: 'whole' });
    const drawn = offer.dose.plan.total.value;
    const after = barn.barn.context.memory.jugs.find(({ id }) => id === bottle.id);
    expect(after?.drawn.value).toBe(drawn);
  });

  test('is kept over a restart', () => {
    const barn = testBarn();
    barn.send(BOTTLE);
    const [bottle] = barn.barn.context.memory.jugs;
    expect(barn.store.jugs.atHand()[0]).toEqual(bottle);
  });

  test.each([
    ['of a liquid there is not', { ...BOTTLE, presentationId: 'no-such' }, 'no-such-bottle'],
    ['of a powder', { ...BOTTLE, presentationId: 'levamisole-52g' }, 'no-such-bottle'],
    ['past its printed month', { ...BOTTLE, expiry: { year: 2027, month: 3 } }, 'bottle-expired'],
  ])('%s is refused, and nothing is written', (_which, intent, code) => {
    const barn = testBarn();
    expect(barn.send(intent)).toMatchObject({ ok: false, code });
    expect(barn.store.jugs.atHand()).toHaveLength(1);
  });
});
