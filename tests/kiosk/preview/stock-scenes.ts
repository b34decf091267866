import type { KioskState } from '../../../shared/state.ts';
import type { StockEventView, StockLotPage, StockLotView, StockView } from '../../../shared/stock.ts';
import { BASE } from './base-state.ts';
import type { Scene } from './scene.ts';

const PACKETS: StockLotView = {
  id: 'lot-1',
  presentationId: 'levamisole-52g',
  medicine: 'Levamisole',
  form: 'powder',
  lot: 'LV2407-A',
  expiry: { year: 2027, month: 8 },
  freshness: 'good',
  pieces: 2.5,
  pieceHolds: 52,
  proposed: true,
  heads: 243,
  guessed: 0,
  pieceCost: { currency: 'EUR', minor: 1240 },
  headCost: { currency: 'EUR', minor: 12.7 },
};
const SOON: StockLotView = {
  ...PACKETS,
  id: 'lot-2',
  lot: null,
  expiry: { year: 2026, month: 5 },
  freshness: 'soon',
  pieces: 4,
  proposed: false,
  heads: 390,
  pieceCost: null,
  headCost: null,
};
const OVER: StockLotView = {
  ...PACKETS,
  id: 'lot-3',
  lot: 'LV2201',
  expiry: { year: 2026, month: 2 },
  freshness: 'expired',
  pieces: 1,
  proposed: false,
  heads: 97,
};
const BOTTLES: StockLotView = {
  ...PACKETS,
  id: 'lot-4',
  presentationId: 'fenbendazole-100',
  medicine: 'Fenbendazole',
  form: 'liquid',
  lot: 'F7',
  expiry: { year: 2028, month: 1 },
  pieces: 1,
  pieceHolds: 1000,
  heads: 410,
  guessed: 3,
};
const STOCK: StockView = {
  currency: 'EUR',
  lots: [PACKETS, SOON, OVER, BOTTLES],
  expired: ['lot-3'],
  last: ['fenbendazole-100'],
};
const happened = (id: string, over: Partial<StockEventView>): StockEventView => ({
  id,
  kind: 'received',
  pieces: 10,
  difference: null,
  price: null,
  jugNumber: null,
  why: null,
  at: '2026-04-02T08:00:00Z',
  by: 'Sam',
  ...over,
});
const EVENTS: readonly StockEventView[] = [
  happened('e5', { kind: 'counted', pieces: 2.5, difference: -1, at: '2026-04-14T09:00:00Z' }),
  happened('e4', { kind: 'taken', pieces: 0.5, jugNumber: 7, at: '2026-04-14T08:00:00Z' }),
  happened('e3', { kind: 'taken', pieces: 1, at: '2026-04-12T08:00:00Z', by: 'Alex' }),
  happened('e2', { kind: 'thrown-away', pieces: 5, why: 'spoilt', at: '2026-04-09T08:00:00Z' }),
  happened('e1', { price: { currency: 'EUR', minor: 12_400 } }),
];
const pageOf = (lot: StockLotView): StockLotPage => ({ lot, events: [...EVENTS] });

function scene(name: string, place: string, extra: Partial<Scene> & { stock?: StockView } = {}): Scene {
  const { stock = STOCK, ...rest } = extra;
  const state: KioskState = { ...BASE, stock };
  const http = {
    '/api/stock': stock,
    ...Object.fromEntries(stock.lots.map((lot) => [`/api/stock/${lot.id}`, pageOf(lot)])),
  };
  return { name, place, state, http, ...rest };
}

const KIND = ['receive-kind', 'letter-4', 'letters-A–J', 'letter-B', 'letters-done'];
const COUNTED = [...KIND, 'year-more', 'month-set', 'key-1', 'key-0', 'key-done'];

/** The stock: what is there, what came in, which lot is in the hand. */
export const STOCK_SCENES: readonly Scene[] = [
  scene('stock', 'shed/stock'),
  scene('stock-none', 'shed/stock', { stock: { ...STOCK, lots: [], expired: [], last: [] } }),
  scene('stock-lot', 'shed/stock/lot-1'),
  scene('stock-lot-history', 'shed/stock/lot-1/history'),
  scene('stock-lot-expired', 'shed/stock/lot-3'),
  scene('stock-lot-guessed', 'shed/stock/lot-4'),
  scene('stock-away', 'shed/stock/lot-3/away'),
  scene('stock-away-many', 'shed/stock/lot-1/away', { taps: ['away-spoilt'] }),
  scene('stock-away-some', 'shed/stock/lot-1/away', {
    taps: ['away-spoilt', 'away-other', 'key-1', 'key-done'],
  }),
  scene('stock-count', 'shed/stock/lot-1/count', { taps: ['key-2', 'key-point', 'key-5'] }),
  scene('stock-currency', 'shed/stock/currency'),
  scene('stock-receive', 'shed/stock/new'),
  scene('stock-receive-lot', 'shed/stock/new', { taps: KIND.slice(0, -1) }),
  scene('stock-receive-lot-empty', 'shed/stock/new', { taps: ['receive-kind'] }),
  scene('stock-receive-expiry', 'shed/stock/new', { taps: [...KIND, 'year-less', 'month-less'] }),
  scene('stock-receive-many', 'shed/stock/new', { taps: COUNTED.slice(0, -1) }),
  scene('stock-receive-cost', 'shed/stock/new', { taps: COUNTED }),
  scene('stock-receive-price', 'shed/stock/new', {
    taps: [...COUNTED, 'price-enter', 'key-1', 'key-2', 'key-4'],
  }),
  scene('stock-receive-confirm', 'shed/stock/new', {
    taps: [...COUNTED, 'price-enter', 'key-1', 'key-2', 'key-4', 'key-done'],
  }),
  scene('stock-shed', 'shed'),
  scene('stock-home', 'home'),
  scene('stock-home-last', 'home', { stock: { ...STOCK, expired: [] } }),
  {
    ...scene('jug-lot', 'jug'),
    state: {
      ...BASE,
      stock: STOCK,
      jug: { step: 'lot', packetId: 'levamisole-52g', medicine: 'Levamisole' },
    },
  },
  {
    ...scene('jug-lot-expired', 'jug'),
    state: {
      ...BASE,
      stock: { ...STOCK, lots: [OVER] },
      jug: { step: 'lot', packetId: 'levamisole-52g', medicine: 'Levamisole' },
    },
  },
  scene('bottle-lot', 'jug/bottle', {
    stock: {
      ...STOCK,
      lots: BASE.shed.liquids.slice(0, 1).map(({ id }) => ({ ...BOTTLES, presentationId: id })),
    },
    taps: ['bottle-liquid'],
  }),
  scene('bottle-lot-open', 'jug/bottle', {
    stock: {
      ...STOCK,
      lots: BASE.shed.liquids.slice(0, 1).map(({ id }) => ({ ...BOTTLES, presentationId: id })),
    },
    taps: ['bottle-liquid', 'lot'],
  }),
];
