import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { medicineById, presentationById } from '../../../core/medicine/formulary.ts';
import { DAY_MS } from '../../../core/moment.ts';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { quantity } from '../../../core/quantity/quantity.ts';
import { attentionTo } from '../../../core/stock/attention.ts';
import { activeInPiece, costOfActive, costOfPieces } from '../../../core/stock/cost.ts';
import { freshnessOf, SOON_DAYS } from '../../../core/stock/expiry.ts';
import { headNeed, headsIn } from '../../../core/stock/heads.ts';
import { minorDigits, money, priceFrom } from '../../../core/stock/money.ts';
import { pieces } from '../../../core/stock/pieces.ts';
import { lotsOf, proposedLot } from '../../../core/stock/propose.ts';
import { makeAnimal } from '../make/animal.ts';
import { BOTTLES, lotOf, TEN_FOR } from '../make/stock.ts';
import { NINE_OCLOCK } from '../make/time.ts';

function packet() {
  const found = presentationById(SHIPPED, 'levamisole-52g');
  if (found === undefined) throw new Error('the packet does not ship');
  return found.presentation;
}

describe('what a use cost', () => {
  test('adds up: however a lot is parted into doses, they cost together what was paid', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.01, max: 5, noNaN: true }), { minLength: 1 }), (parts) => {
        const whole = parts.reduce((sum, part) => sum + part, 0);
        const inPiece = activeInPiece(packet(), TEN_FOR).value;
        const doses = parts.map((part) => quantity('mg', (inPiece * 10 * part) / whole));
        const cost = doses.map((dose) => costOfActive(TEN_FOR, packet(), dose)?.minor ?? Number.NaN);
        expect(cost.reduce((sum, minor) => sum + minor, 0)).toBeCloseTo(12_400, 6);
      }),
    );
  });

  test('follows from the price and the active used: 163 mg of a packet of 46.8 g at 12.40 is 4.3 cents', () => {
    expect(activeInPiece(packet(), TEN_FOR)).toEqual(quantity('mg', 46_800));
    expect(costOfActive(TEN_FOR, packet(), quantity('mg', 163.2))?.minor).toBeCloseTo(4.324, 3);
    expect(costOfPieces(TEN_FOR, pieces(0.5))).toEqual({ currency: 'EUR', minor: 620 });
  });

  test('of a bottle goes by its volume', () => {
    const found = presentationById(SHIPPED, 'fenbendazole-100');
    if (found === undefined) throw new Error('the liquid does not ship');
    const litre = lotOf(2, BOTTLES, money('EUR', 9_000));
    expect(activeInPiece(found.presentation, litre).value).toBe(100_000);
    expect(costOfActive(litre, found.presentation, quantity('mg', 200))?.minor).toBeCloseTo(9, 9);
  });

  test('is not known without a price', () => {
    expect(costOfPieces(lotOf(3), pieces(1))).toBeNull();
  });
});

describe('a price as it is keyed in', () => {
  test.each([
    ['12.4', 'EUR', 1240],
    ['12.40', 'EUR', 1240],
    ['12', 'EUR', 1200],
    ['12.', 'EUR', 1200],
    ['0.05', 'USD', 5],
    ['1500', 'JPY', 1500],
  ])('%s %s is %d', (entry, currency, minor) => {
    expect(priceFrom(entry, currency)).toEqual({ currency, minor });
  });

  test.each([
    ['12.345', 'EUR'],
    ['1.5', 'JPY'],
    ['', 'EUR'],
    ['.', 'EUR'],
  ])('%j %s is no price', (entry, currency) => {
    expect(priceFrom(entry, currency)).toBeNull();
  });

  test('is a whole number of the smallest unit', () => {
    expect(() => money('EUR', 1.5)).toThrow(RangeError);
    expect(() => money('EUR', -1)).toThrow(RangeError);
    expect(minorDigits('EUR')).toBe(2);
  });
});

describe('which lot to use first', () => {
  const early = lotOf(2, { id: 'early', expiresAtMs: NINE_OCLOCK + 100 * DAY_MS });
  const late = lotOf(2, { id: 'late', expiresAtMs: NINE_OCLOCK + 400 * DAY_MS });
  const open = lotOf(1.5, { id: 'open', expiresAtMs: NINE_OCLOCK + 300 * DAY_MS });
  const over = lotOf(2, { id: 'over', expiresAtMs: NINE_OCLOCK - DAY_MS });

  test('is the one with an open packet, else the first to expire, never one past its month', () => {
    expect(proposedLot([late, early], 'levamisole-52g', NINE_OCLOCK)?.id).toBe('early');
    expect(proposedLot([late, early, open], 'levamisole-52g', NINE_OCLOCK)?.id).toBe('open');
    expect(proposedLot([over, late], 'levamisole-52g', NINE_OCLOCK)?.id).toBe('late');
    expect(proposedLot([over], 'levamisole-52g', NINE_OCLOCK)).toBeNull();
  });

  test('is asked of lots on hand of that presentation alone', () => {
    const none = lotOf(0, { id: 'none' });
    expect(lotsOf([none, late, lotOf(1, BOTTLES)], 'levamisole-52g').map(({ id }) => id)).toEqual(['late']);
  });

  test('goes by its month: good, soon over, over', () => {
    const at = (days: number) => freshnessOf({ expiresAtMs: NINE_OCLOCK + days * DAY_MS }, NINE_OCLOCK);
    expect([at(SOON_DAYS + 1), at(SOON_DAYS), at(1), at(0)]).toEqual(['good', 'soon', 'soon', 'expired']);
  });
});

describe('what needs a look', () => {
  test('is a lot past its month, and the last piece of a presentation that may still be used', () => {
    const over = lotOf(5, { id: 'over', expiresAtMs: NINE_OCLOCK });
    const last = lotOf(1, { id: 'last' });
    expect(attentionTo([over, last], NINE_OCLOCK)).toEqual([
      { kind: 'expired', lotId: 'over' },
      { kind: 'last', presentationId: 'levamisole-52g' },
    ]);
    expect(attentionTo([last, lotOf(1, { id: 'second' })], NINE_OCLOCK)).toEqual([]);
    expect(attentionTo([lotOf(0)], NINE_OCLOCK)).toEqual([]);
  });
});

describe('how many animals it is enough for', () => {
  const levamisole = medicineById(SHIPPED, 'levamisole');
  if (levamisole === undefined) throw new Error('levamisole does not ship');
  const weighing = (kg: number) => ({ mass: kilograms(kg), atMs: NINE_OCLOCK });

  test('goes by the mean dose of the herd', () => {
    const goats = [20, 40].map((kg) => makeAnimal({ id: `g${kg}`, lastWeight: weighing(kg) }));
    const need = headNeed(levamisole, 'levamisole-52g', goats, []);
    const rate = levamisole.regimens.find(({ species }) => species === 'goat')?.target;
    if (rate === undefined || !('value' in rate)) throw new Error('no rate ships for goats');
    expect(need).toEqual({ active: quantity('mg', 30 * rate.value), animals: 2, guessed: 0 });
    expect(need && headsIn(quantity('mg', 46_800), need)).toBe(Math.floor(46_800 / (30 * rate.value)));
  });

  test('takes one never weighed by its class, and says so', () => {
    const need = headNeed(levamisole, 'levamisole-52g', [makeAnimal({ lastWeight: null })], []);
    expect(need).toMatchObject({ animals: 1, guessed: 1 });
    expect(grams(need?.active.value ?? 0).value).toBeGreaterThan(0);
  });

  test('is not known of a herd without a rule', () => {
    expect(headNeed(levamisole, 'levamisole-52g', [], [])).toBeNull();
  });
});
