import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { remaining } from '../../../core/mixing/jug.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { stockLotPage, stockView } from '../../../server/view/stock-view.ts';
import { bringToOffer, type TestBarn, testBarn } from '../make/test-barn.ts';

const TEN = {
  type: 'stock-receive',
  presentationId: 'levamisole-52g',
  lot: 'A12',
  expiry: { year: 2028, month: 3 },
  holdsMl: null,
  pieces: 10,
  priceMinor: 12_400,
} as const;
const BOTTLES = {
  ...TEN,
  presentationId: 'fenbendazole-100',
  lot: 'F7',
  holdsMl: 1000,
  pieces: 2,
  priceMinor: null,
};

function stockOf({ barn }: TestBarn) {
  return stockView(barn.context);
}

function idOf(test: TestBarn, lot = 'A12'): string {
  const id = stockOf(test).lots.find((each) => each.lot === lot)?.id;
  if (id === undefined) throw new Error(`no lot ${lot}`);
  return id;
}

describe('the stock', () => {
  test('tells what came in, what it cost and for how many animals it is enough', () => {
    const barn = testBarn();
    expect(barn.send({ type: 'set-currency', currency: 'EUR' })).toMatchObject({ ok: true });
    expect(barn.send(TEN)).toMatchObject({ ok: true });
    const [lot] = stockOf(barn).lots;
    expect(lot).toMatchObject({
      medicine: 'Levamisole',
      pieces: 10,
      freshness: 'good',
      proposed: true,
      pieceCost: { currency: 'EUR', minor: 1240 },
    });
    expect(lot?.heads).toBeGreaterThan(100);
  });

  test('puts more of the same print to the lot it has, and another month beside it', () => {
    const barn = testBarn();
    barn.send(TEN);
    barn.send({ ...TEN, pieces: 5, priceMinor: null });
    barn.send({ ...TEN, expiry: { year: 2027, month: 9 } });
    const { lots } = stockOf(barn);
    expect(lots.map(({ expiry, pieces }) => [expiry.year, pieces])).toEqual([
      [2027, 10],
      [2028, 15],
    ]);
  });

  test('is kept over a restart, with every event', () => {
    const path = join(mkdtempSync(join(tmpdir(), 'stock-')), 'barn.db');
    const barn = testBarn(path);
    barn.send(TEN);
    barn.send({ type: 'stock-throw-away', lotId: idOf(barn), pieces: 1, why: 'spoilt' });
    barn.send({ type: 'stock-count', lotId: idOf(barn), pieces: 8.5 });
    const before = barn.barn.context.memory.stock;
    barn.store.close();
    const again = testBarn(path);
    expect(again.barn.context.memory.stock).toEqual(before);
    const page = stockLotPage(again.barn.context, idOf(again));
    expect(page?.events.map(({ kind, pieces, difference }) => [kind, pieces, difference])).toEqual([
      ['counted', 8.5, -0.5],
      ['thrown-away', 1, null],
      ['received', 10, null],
    ]);
    again.store.close();
  });

  test.each([
    ['of a presentation there is not', { ...TEN, presentationId: 'no-such' }, 'no-such-packet'],
    ['of a packet that holds millilitres', { ...TEN, holdsMl: 1000 }, 'bad-input'],
    ['of a bottle that holds nothing', { ...BOTTLES, holdsMl: null }, 'bad-input'],
  ])('takes in nothing %s', (_what, intent, code) => {
    const barn = testBarn();
    expect(barn.send(intent)).toMatchObject({ ok: false, code });
    expect(barn.store.stock.lots()).toEqual([]);
  });

  test('throws away no more than there is', () => {
    const barn = testBarn();
    barn.send(TEN);
    const lotId = idOf(barn);
    const away = { type: 'stock-throw-away', lotId, pieces: 11, why: 'lost' } as const;
    expect(barn.send(away)).toMatchObject({ ok: false, code: 'more-than-on-hand' });
    expect(barn.send({ ...away, lotId: 'no-such' })).toMatchObject({ ok: false, code: 'no-such-lot' });
    expect(stockOf(barn).lots[0]?.pieces).toBe(10);
  });

  test('cannot be changed on disk', () => {
    const path = join(mkdtempSync(join(tmpdir(), 'stock-')), 'barn.db');
    const barn = testBarn(path);
    barn.send(TEN);
    barn.store.close();
    const db = openStore(path);
    for (const table of ['stock_lots', 'stock_events']) {
      expect(() => db.exec(`UPDATE ${table} SET id = 'other'`)).toThrow('never edited');
      expect(() => db.exec(`DELETE FROM ${table}`)).toThrow('nothing is deleted');
    }
    db.close();
  });

  test('tells of lots past their month and of the last piece', () => {
    const barn = testBarn();
    barn.send({ ...TEN, pieces: 1 });
    expect(stockOf(barn)).toMatchObject({ expired: [], last: ['levamisole-52g'] });
    barn.clock.pass(400 * 24 * 3_600_000);
    expect(stockOf(barn)).toMatchObject({ expired: [idOf(barn)], last: [] });
  });
});

describe('a bottle opened from the stock', () => {
  test('has the print of its lot and is one less', () => {
    const barn = testBarn();
    barn.send(BOTTLES);
    const lotId = idOf(barn, 'F7');
    const open = {
      type: 'open-bottle',
      presentationId: 'fenbendazole-100',
      volumeMl: 50,
      expiry: { year: 2099, month: 1 },
      lotId,
    } as const;
    expect(barn.send(open)).toMatchObject({ ok: true });
    const [bottle] = barn.barn.context.memory.jugs;
    expect(bottle?.stock).toMatchObject({ lotId, lot: 'F7' });
    expect(bottle === undefined ? 0 : remaining(bottle).value).toBe(1000);
    expect(stockOf(barn).lots[0]?.pieces).toBe(1);
    const page = stockLotPage(barn.barn.context, lotId);
    expect(page?.events[0]).toMatchObject({ kind: 'taken', pieces: 1, jugNumber: bottle?.number });
    expect(barn.store.jugs.atHand()[0]).toEqual(bottle);
  });

  test('is refused of a lot past its month, and of another medicine’s', () => {
    const barn = testBarn();
    barn.send(TEN);
    barn.send(BOTTLES);
    const open = {
      type: 'open-bottle',
      presentationId: 'fenbendazole-100',
      volumeMl: 1000,
      expiry: { year: 2099, month: 1 },
    } as const;
    expect(barn.send({ ...open, lotId: idOf(barn) })).toMatchObject({ code: 'no-such-lot' });
    const lotId = idOf(barn, 'F7');
    barn.clock.pass(400 * 24 * 3_600_000);
    expect(barn.send({ ...open, lotId })).toMatchObject({ code: 'bottle-expired' });
    expect(barn.barn.context.memory.stock.map(({ onHand }) => onHand.value)).toEqual([10, 2]);
  });
});

describe('a jug mixed from the stock', () => {
  function bench(barn: TestBarn, load: number): void {
    for (let i = 0; i < 12; i += 1) {
      barn.clock.pass(100);
      barn.barn.read({
        role: 'bench',
        mass: grams(load),
        division: grams(1),
        stability: 'stable',
        net: false,
        zero: load === 0,
        at: barn.clock.uptimeMs,
      });
    }
  }

  /** Mixes packets of the lot up to the label, in a jug of 312 g. */
  function mix(barn: TestBarn, lotId: string | null, count = 1): void {
    barn.send({ type: 'mix-start', packetId: 'levamisole-52g' });
    barn.send({ type: 'mix-lot', lotId });
    barn.send({ type: 'mix-amount', amount: { kind: 'packets', count } });
    barn.send({ type: 'mix-dilution', perPacketMl: 946.352946, deliberate: false });
    barn.send({ type: 'mix-water', celsius: 20 });
    bench(barn, 312);
    barn.send({ type: 'mix-jug-placed' });
    barn.send({ type: 'mix-jug-is-empty', vesselId: null, deliberate: true });
    bench(barn, 312 + 902 * count);
    barn.send({ type: 'mix-poured' });
    bench(barn, 312 + (902 + 52) * count);
    barn.send({ type: 'mix-dissolved' });
  }

  test('draws it down once it is in service, and its doses tell lot and month', () => {
    const barn = testBarn();
    barn.send(TEN);
    const lotId = idOf(barn);
    barn.send({ type: 'jug-discard', jugId: 'jug-1' });
    mix(barn, lotId);
    expect(stockOf(barn).lots[0]?.pieces).toBe(10);
    barn.send({ type: 'mix-in-service' });
    expect(stockOf(barn).lots[0]?.pieces).toBe(9);
    const [jug] = barn.barn.context.memory.jugs;
    barn.send({ type: 'take-jug', jugId: jug?.id ?? '' });
    barn.send({ type: 'prove-jug', jugId: jug?.id ?? '', deliberate: true });
    barn.send({ type: 'give', offerId: bringToOffer(barn), outcome: 'whole' });
    const [entry] = barn.store.dayBook.newest(1);
    expect(entry?.treatment.offer.jug.stock).toEqual(jug?.stock);
    expect(entry?.treatment.offer.jug.stock).toMatchObject({ lotId, lot: 'A12' });
  });

  test('that needs more than the list holds tells the surplus as a difference', () => {
    const barn = testBarn();
    barn.send({ ...TEN, pieces: 1 });
    const lotId = idOf(barn);
    mix(barn, lotId, 2);
    barn.send({ type: 'mix-in-service' });
    expect(barn.store.stock.eventsOf(lotId, 9).map(({ kind }) => kind)).toEqual([
      'taken',
      'counted',
      'received',
    ]);
    expect(barn.store.stock.eventsOf(lotId, 9)[1]).toMatchObject({ difference: 1 });
    expect(barn.barn.context.memory.stock[0]?.onHand.value).toBe(0);
  });

  test('given up with its powder in takes the packet all the same', () => {
    const barn = testBarn();
    barn.send(TEN);
    mix(barn, idOf(barn));
    barn.send({ type: 'mix-cancel' });
    expect(stockOf(barn).lots[0]?.pieces).toBe(9);
    expect(barn.store.stock.eventsOf(idOf(barn), 1)[0]).toMatchObject({ kind: 'taken', jugId: null });
  });

  test('is refused of a lot past its month, and nothing is taken', () => {
    const barn = testBarn();
    barn.send(TEN);
    barn.clock.pass(400 * 24 * 3_600_000);
    barn.send({ type: 'mix-start', packetId: 'levamisole-52g' });
    expect(barn.send({ type: 'mix-lot', lotId: idOf(barn) })).toMatchObject({ code: 'lot-expired' });
    expect(barn.barn.context.memory.mixing.step).toBe('lot');
  });
});
