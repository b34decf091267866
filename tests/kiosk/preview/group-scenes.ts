import type { GroupsView, GroupView } from '../../../shared/group.ts';
import type { KioskState } from '../../../shared/state.ts';
import { BASE, HERD, treatment } from './base-state.ts';
import type { Scene } from './scene.ts';

const GOATS = HERD.filter(({ species, lastWeightGrams }) => species === 'goat' && lastWeightGrams !== null);
const weighed = ({ id, name, lastWeightGrams }: (typeof GOATS)[number]) => ({
  animal: id,
  name,
  grams: lastWeightGrams ?? 0,
  weighedAt: '2026-03-20T09:00:00Z',
});
const heaviestFirst = GOATS.filter(({ id }) => id !== 'a7')
  .map(weighed)
  .sort((a, b) => b.grams - a.grams);
const [heaviest] = heaviestFirst;
const lightest = heaviestFirst.at(-1);
if (heaviest === undefined || lightest === undefined) throw new Error('there is no herd');

const GROUP: GroupView = {
  species: 'goat',
  volumeMl: 7.6,
  syringeName: '12 mL syringe',
  syringeCapacityMl: 12,
  syringeGraduationMl: 0.2,
  marksMl: [7.6],
  targetMgPerKg: 12,
  ceilingMgPerKg: 18,
  heaviest,
  lightest: { ...lightest, gets: { value: 16.4, low: 14.9, high: 18 } },
  members: heaviestFirst.map((member) => ({
    ...member,
    asks: member.animal === 'a1' ? [{ code: 'milk-time-unknown', strength: 'ask', values: {} }] : [],
  })),
};

/** The herd by its last weights: four goats in one group, a kid alone, and two in none. */
export const GROUPS: GroupsView = {
  inHand: true,
  groups: [GROUP, { ...GROUP, members: GROUP.members.slice(0, 1) }],
  out: [
    { animal: 'a8', name: 'Hazel', why: 'never-weighed', caution: null },
    {
      animal: 'a5',
      name: 'Thistle',
      why: 'stop',
      caution: { code: 'not-approved', strength: 'stop', values: {} },
    },
  ],
};
const PATH = '/api/groups/j7';
const basis = {
  heaviestName: 'Biscuit',
  heaviestGrams: 31_200,
  weighedAt: '2026-03-20T09:00:00Z',
  members: 4,
};
const at = (changes: Partial<KioskState> = {}): KioskState => ({
  ...BASE,
  animals: BASE.animals.map((animal) => (animal.species === 'goat' ? { ...animal, pen: 'north' } : animal)),
  ...changes,
});
const given = treatment('t9', {
  animal: 'a4',
  animalName: 'Biscuit',
  volumeMl: 7.6,
  givenAt: '2026-04-14T14:03:20Z',
  group: basis,
});

function scene(name: string, taps: readonly string[], over: Partial<GroupsView> = {}, changes = {}): Scene {
  return {
    name,
    place: 'jug/j7/group/all',
    state: at(changes),
    http: { [PATH]: { ...GROUPS, ...over } },
    taps,
  };
}

/** The dosing of animals that cannot be weighed one by one. */
export const GROUP_SCENES: readonly Scene[] = [
  { name: 'group-choose', place: 'jug/j7/group', state: at(), http: { [PATH]: GROUPS } },
  scene('group-facts', []),
  scene('group-not-in-hand', [], { inHand: false }),
  scene('group-who', ['group-who']),
  scene('group-out', ['group-out']),
  scene('group-none', [], { groups: [] }),
  scene('group-giving', ['group-start']),
  scene('group-giving-second', ['group-start'], {}, { dayBook: [given, ...BASE.dayBook] }),
  scene('group-ask', ['group-start', 'group-skip', 'group-skip']),
  { name: 'group-record', place: 'day-book/t9', state: at({ dayBook: [given] }) },
];
