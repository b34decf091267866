import { grams, kilograms, type Mass } from '../../core/quantity/mass.ts';
import { add } from '../../core/quantity/quantity.ts';
import type { Timers } from '../serial/timers.ts';
import { createVisit, type Visit } from './animal.ts';
import type { AnimalGrade } from './gait.ts';
import { seededRandom } from './random.ts';
import { createSimScale, type SimScale } from './sim-scale.ts';

/** A livestock platform and what is led onto it. */
export interface SimPlatform extends SimScale {
  /** An animal walks on; one that stands there already stays beside it. */
  leadOn(animal: { readonly mass: Mass; readonly grade: AnimalGrade }): void;
  /** All animals walk off. */
  walkOff(): void;
  /** Mud or a bucket is left on the deck, or taken off again with a mass below zero. */
  leaveOn(mass: Mass): void;
}

/** What a simulated platform needs. */
export interface SimPlatformOptions {
  readonly timers: Timers;
  /** Any integer: the same seed makes the same animals move the same way. */
  readonly seed: number;
  /** 50 g unless told otherwise. */
  readonly division?: Mass;
  /** 150 kg unless told otherwise. */
  readonly capacity?: Mass;
}

interface Standing {
  readonly visit: Visit;
  readonly onAt: number;
  leavingAt: number | null;
}

/** Starts a platform that sends `st-gs` lines in kilograms by itself. */
export function createSimPlatform(options: SimPlatformOptions): SimPlatform {
  const { timers } = options;
  const random = seededRandom(options.seed);
  let standing: Standing[] = [];
  let left = grams(0);

  function loadAt(now: number): Mass {
    standing = standing.filter((one) => one.leavingAt === null || now - one.leavingAt <= one.visit.leaveMs);
    return standing.reduce((sum, one) => {
      const leavingMs = one.leavingAt === null ? null : now - one.leavingAt;
      return add(sum, one.visit.loadAt(now - one.onAt, leavingMs));
    }, left);
  }
  const scale = createSimScale({
    timers,
    face: { unit: 'kg', division: options.division ?? grams(50) },
    capacity: options.capacity ?? kilograms(150),
    format: 'st-gs',
    load: loadAt,
    changing: () => false,
  });

  return {
    ...scale,
    leadOn({ mass, grade }) {
      const seed = Math.floor(2 ** 31 * random());
      standing.push({ visit: createVisit({ mass, grade, seed }), onAt: timers.now(), leavingAt: null });
    },
    walkOff() {
      for (const one of standing) one.leavingAt ??= timers.now();
    },
    leaveOn(mass) {
      left = add(left, mass);
    },
  };
}
