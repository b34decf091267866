import { type DoseWorld, decideDose } from '../../core/dosing/decide.ts';
import { SYRINGE_CATALOGUE } from '../../core/dosing/syringe.ts';
import { SHIPPED } from '../../core/formulary/shipped.ts';
import { DAY_MS } from '../../core/moment.ts';
import { grams, kilograms } from '../../core/quantity/mass.ts';
import { mgPerMl } from '../../core/quantity/strength.ts';
import { millilitres } from '../../core/quantity/volume.ts';
import type { Figure } from './table.ts';

const NOW = Date.UTC(2027, 5, 1);
const NO_DOUBTS = { unanswered: false, namedLate: false };

/** How long a whole dose decision takes with ten years of history and every syringe of the catalogue. */
export function doseFigures(): Figure[] {
  const animal = {
    id: 'a',
    name: 'A',
    species: 'goat',
    class: 'female',
    tag: null,
    inMilk: true,
    bornAtMs: null,
    bredAtMs: null,
    malesRemovedAtMs: null,
    lastWeight: { mass: kilograms(40), atMs: NOW - 30 * DAY_MS },
  } as const;
  const jug = {
    id: 'j',
    number: 1,
    medicineId: 'levamisole',
    packetId: 'levamisole-52g',
    strength: mgPerMl(49.45),
    relative: 0.005,
    volume: millilitres(946),
    mixedAtMs: NOW - 1000,
    useByMs: NOW + DAY_MS,
    by: 'w',
    clockTrusted: true,
    discardedAtMs: null,
    weighed: null,
    drawn: millilitres(0),
    drawnDoubt: millilitres(0),
    draws: 0,
  };
  const earlier = Array.from({ length: 30 * 60 }, (_, i) => ({
    animalId: i % 30 === 0 ? 'a' : `other-${i % 30}`,
    medicineId: 'levamisole',
    givenAtMs: NOW - (1820 - i) * 2 * DAY_MS,
    clockTrusted: true,
  }));
  const approval = {
    regimenId: 'levamisole-goat',
    by: 'w',
    direction: 'veterinarian',
    atMs: 0,
    figures: null,
    vet: null,
    targetMgPerKg: null,
    meat: null,
    milk: null,
  } as const;
  const world: DoseWorld = {
    formulary: SHIPPED,
    approvals: [approval],
    syringes: SYRINGE_CATALOGUE,
    earlier,
    scale: {
      last: { verdict: 'passed', atMs: NOW - DAY_MS, clockTrusted: true },
      everyDays: 30,
      stops: false,
    },
    now: { wallMs: NOW },
    clockTrusted: true,
  };
  const times: number[] = [];
  for (let i = 0; i < 3000; i += 1) {
    const weight = { mass: grams(4000 + 40 * i), uncertainty: grams(60), at: 0, changedFrom: null };
    const from = performance.now();
    const { dose } = decideDose(animal, weight, jug, NO_DOUBTS, world);
    times.push(performance.now() - from);
    if (dose === null) throw new Error('no dose came out, so nothing was measured');
  }
  times.sort((a, b) => a - b);
  const p99 = times[Math.floor(0.99 * times.length)] ?? Number.NaN;
  return [
    {
      what: 'whole dose decision, p99, 1,800 earlier doses',
      ratio: 2 / p99,
      against: 'the 2 ms a reading may take',
      raw: `${(1000 * p99).toFixed(0)} us`,
    },
  ];
}
