import type { CorrectionView } from '../../../shared/dose.ts';
import type { KioskState } from '../../../shared/state.ts';
import { BASE, treatment } from './base-state.ts';
import type { Scene } from './scene.ts';

function at(changes: Partial<KioskState>): KioskState {
  return { ...BASE, ...changes };
}

const corrected = (id: string, kind: CorrectionView['kind'], extra: Partial<CorrectionView> = {}) =>
  treatment(id, {
    animal: 'a6',
    animalName: 'Old Bramble',
    volumeMl: 11.3,
    corrections: [
      {
        id: `c-${id}`,
        kind,
        animal: null,
        animalName: null,
        volumeMl: null,
        meat: null,
        milk: null,
        at: '2026-04-14T13:35:00Z',
        by: 'Sam',
        ...extra,
      },
    ],
  });
const CORRECTED = [
  corrected('t23', 'wrong-volume', { volumeMl: 10.1 }),
  corrected('t22', 'not-given'),
  corrected('t21', 'wrong-animal', { animal: 'a2', animalName: 'Juniper' }),
  treatment('t20', { outcome: 'part' }),
];

/** The day book, with corrections of every kind, and the doors of the Shed. */
export const BOOK_AND_SHED_SCENES: readonly Scene[] = [
  { name: 'daybook', place: 'day-book', state: at({}) },
  { name: 'daybook-corrected', place: 'day-book', state: at({ dayBook: CORRECTED }) },
  { name: 'daybook-record-volume', place: 'day-book/t23', state: at({ dayBook: CORRECTED }) },
  { name: 'daybook-record-not-given', place: 'day-book/t22', state: at({ dayBook: CORRECTED }) },
  { name: 'home-corrected', place: 'home', state: at({ dayBook: CORRECTED }) },
  { name: 'daybook-record', place: 'day-book/t4', state: at({}) },
  { name: 'daybook-record-2', place: 'day-book/t4', state: at({}), taps: ['page-after', 'page-after'] },
  { name: 'shed', place: 'shed', state: at({}) },
  { name: 'shed-devices', place: 'shed/devices', state: at({}) },
  { name: 'shed-syringes', place: 'shed/syringes', state: at({}) },
  { name: 'shed-rules', place: 'shed/rules', state: at({}) },
  { name: 'shed-rule', place: 'shed/rules/levamisole-goat', state: at({}) },
  { name: 'shed-rule-approved', place: 'shed/rules/levamisole-sheep', state: at({}) },
  { name: 'shed-approve', place: 'shed/rules/levamisole-goat/approve', state: at({}) },
  {
    name: 'shed-approve-vet',
    place: 'shed/rules/levamisole-goat/approve',
    state: at({}),
    taps: ['approve-by-vet', 'vet-unnamed', 'vet-milk-more', 'vet-milk-more'],
  },
  { name: 'shed-people', place: 'shed/people', state: at({}) },
  { name: 'shed-screen', place: 'shed/screen', state: at({}) },
  { name: 'enrol-species', place: 'shed/enrol', state: at({}) },
  {
    name: 'enrol-number',
    place: 'shed/enrol',
    state: at({}),
    taps: ['choose-goat', 'choose-female', 'choose-milk-yes', 'key-4', 'key-2'],
  },
  {
    name: 'enrol-tag',
    place: 'shed/enrol',
    state: at({ shed: { ...BASE.shed, unknownTag: '982000123450042' } }),
    taps: ['choose-goat', 'choose-male', 'key-4', 'key-2', 'key-done'],
  },
  { name: 'clock-untrusted', place: 'home', state: at({ clockTrusted: false }) },
];
