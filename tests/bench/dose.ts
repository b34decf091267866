import { type DoseWorld, decideDose } from '../../core/dosing/decide.ts';
import { doseTable } from '../../core/dosing/dose-table.ts';
import { SYRINGE_CATALOGUE } from '../../core/dosing/syringe.ts';
import { SHIPPED } from '../../core/formulary/shipped.ts';
import { regimenById } from '../../core/medicine/formulary.ts';
import { regimenInForce } from '../../core/medicine/in-force.ts';
import { DAY_MS } from '../../core/moment.ts';
import { grams, kilograms } from '../../core/quantity/mass.ts';
import { mgPerMl } from '../../core/quantity/strength.ts';
import { millilitres } from '../../core/quantity/volume.ts';
import type { Figure } from './table.ts';

const NOW = Date.UTC(2027, 5, 1);
const DECISION = 'the 2 ms a decision may take';
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
    stock: null,
    drawn: millilitres(0),
    drawnDoubt: millilitres(0),
    draws: 0,
  };
  // Ten years of a herd of thirty, dosed six times a year.
  const earlier = Array.from({ length: 30 * 60 }, (_, i) => ({
    animalId: i % 30 === 0 ? 'a' : `other-${i % 30}`,
    medicineId: 'levamisole',
    givenAtMs: NOW - (1820 - i) * 2 * DAY_MS,
    clockTrusted: true,
    rest: null,
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
    proven: [],
    scale: {
      last: { verdict: 'passed', atMs: NOW - DAY_MS, clockTrusted: true },
      everyDays: 30,
      stops: false,
    },
    now: { wallMs: NOW },
    clockTrusted: true,
    diskKeeps: true,
  };
  const decide = (i: number): void => {
    const weight = { mass: grams(4000 + 40 * (i % 3000)), uncertainty: grams(60), at: 0, changedFrom: null };
    const { dose } = decideDose(animal, weight, jug, NO_DOUBTS, world);
    if (dose === null) throw new Error('no dose came out, so nothing was measured');
  };
  // The first run is what a kiosk just started does; the second what it does the rest of the day.
  const cold = millisecondsOf(decide, 3000);
  const warm = millisecondsOf(decide, 3000);
  const rule = regimenById(SHIPPED, 'levamisole-goat')?.regimen;
  const regimen = rule === undefined ? null : regimenInForce(rule, approval);
  if (regimen === null) throw new Error('there is no regimen to make a table of');
  const weights = Array.from({ length: 200 }, (_, i) => grams(4000 + 500 * i));
  const tables = millisecondsOf(() => {
    const rows = doseTable(regimen, jug.strength, SYRINGE_CATALOGUE, weights);
    if (rows.length !== 200) throw new Error('the table is not whole');
  }, 50);
  return [
    against('whole dose decision, p99, just started', at(0.99, cold.wall), 2, DECISION),
    against(
      'the same in processor time, others on the board left out',
      at(0.99, cold.processor),
      2,
      DECISION,
    ),
    against('whole dose decision, p99, warm', at(0.99, warm.wall), 2, DECISION),
    against('whole dose decision, median, warm', at(0.5, warm.wall), 2, DECISION),
    against(
      'dose table of 200 weights, the slowest of 50',
      at(1, tables.wall),
      50,
      'the 50 ms a table may take',
    ),
  ];
}

/**
 * How long each of so many runs took in milliseconds, quickest first: by the clock, and of the processor, the compiler's
 * and collector's threads counted in.
 */
function millisecondsOf(run: (i: number) => void, times: number): { wall: number[]; processor: number[] } {
  const wall: number[] = [];
  const processor: number[] = [];
  for (let i = 0; i < times; i += 1) {
    const before = process.cpuUsage();
    const from = performance.now();
    run(i);
    wall.push(performance.now() - from);
    const { user, system } = process.cpuUsage(before);
    processor.push((user + system) / 1000);
  }
  return { wall: wall.sort((a, b) => a - b), processor: processor.sort((a, b) => a - b) };
}

/** The value below which such a share of the sorted values lies. */
function at(share: number, sorted: readonly number[]): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

function against(what: string, ms: number, allowed: number, why: string): Figure {
  return { what, ratio: allowed / ms, against: why, raw: `${(1000 * ms).toFixed(0)} us` };
}
