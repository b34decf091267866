import type { ApartView, FarmView, OfficesView } from '../../../shared/farm.ts';
import { BASE } from './base-state.ts';
import type { Scene } from './scene.ts';

const SHARED = {
  kind: 'hub',
  name: 'North shed',
  hub: 'https://hub.farm:4185',
  others: ['South shed', 'Summer hut'],
  lastAt: BASE.now,
  trouble: null,
  detail: null,
  toPush: 0,
  waiting: 0,
} as const satisfies FarmView['sharing'];

/** A goat that was dosed at two kiosks. */
export const APART: ApartView = {
  animalId: 'a1',
  animalName: 'Old Bramble',
  active: 'Levamisole',
  doses: [
    {
      treatmentId: 't1',
      givenAt: '2026-04-14T06:05:00Z',
      by: 'Wren',
      volumeMl: 11.5,
      graduationMl: 0.5,
      here: true,
      kiosk: 'North shed',
    },
    {
      treatmentId: 't2',
      givenAt: '2026-04-14T06:40:00Z',
      by: 'Finch',
      volumeMl: 11,
      graduationMl: 0.5,
      here: false,
      kiosk: 'South shed',
    },
  ],
};

const sharing = (now: FarmView['sharing']) => ({ ...BASE, demo: false, farm: { apart: [], sharing: now } });
const alarmed = { ...BASE, demo: false, farm: { apart: [APART], sharing: SHARED } };

/** Offices of the hub as the farm is told of them. */
export const OFFICES: OfficesView = {
  offices: [
    { office: 'o-1', name: 'Hill Practice', state: 'asks', since: '2026-04-13T09:00:00Z' },
    { office: 'o-2', name: 'Dale Dairy Co-operative', state: 'reads', since: '2026-02-02T10:30:00Z' },
    { office: 'o-3', name: 'Fell farm desk', state: 'shut-out', since: '2026-03-30T15:00:00Z' },
  ],
};
const offices = (name: string, place: string, told: OfficesView = OFFICES): Scene => ({
  name,
  place: `shed/farm/offices${place}`,
  state: sharing(SHARED),
  http: { '/api/farm/offices': told },
});

/** The other kiosks of the farm. */
export const FARM_SCENES: readonly Scene[] = [
  { name: 'shed-farm', place: 'shed/farm', state: sharing(SHARED) },
  {
    name: 'shed-farm-cut',
    place: 'shed/farm',
    state: sharing({ ...SHARED, trouble: 'unreachable', toPush: 128 }),
  },
  { name: 'shed-farm-shut-out', place: 'shed/farm', state: sharing({ ...SHARED, trouble: 'shut-out' }) },
  { name: 'shed-farm-alone', place: 'shed/farm', state: sharing({ kind: 'none', invitation: null }) },
  {
    name: 'shed-farm-invited',
    place: 'shed/farm',
    state: sharing({ kind: 'none', invitation: { name: 'North shed', hub: 'https://hub.farm:4185' } }),
  },
  offices('shed-offices', ''),
  offices('shed-offices-none', '', { offices: [] }),
  offices('shed-office-asks', '/o-1'),
  offices('shed-office-reads', '/o-2'),
  offices('shed-office-shut-out', '/o-3'),
  { name: 'home-dosed-apart', place: 'home', state: alarmed },
  { name: 'platform-dosed-apart', place: 'platform', state: alarmed },
];
