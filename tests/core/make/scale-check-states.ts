import { NO_CHECK, reduceScaleCheck, type ScaleCheckWorld } from '../../../core/checking/scale-check.ts';
import type {
  ScaleCheck,
  ScaleCheckEvent,
  ScaleCheckOutcome,
  ScaleCheckStep,
} from '../../../core/checking/scale-check-state.ts';
import type { ScaleRole } from '../../../core/weighing/reading.ts';
import { makeBench } from './bench.ts';
import { NINE_OCLOCK, UP } from './time.ts';

/** The world of a check with this many grams at rest on the scale. */
export function checkWorld(onScale: number, over: Partial<ScaleCheckWorld> = {}): ScaleCheckWorld {
  return {
    now: { uptimeMs: UP, wallMs: NINE_OCLOCK },
    clockTrusted: true,
    by: 'Kim',
    scale: makeBench(onScale, { division: { unit: 'g', value: 50 } }),
    scaleReady: true,
    freshId: 'check-new',
    ...over,
  };
}

const PICK_20: ScaleCheckEvent = { type: 'weight', weightId: 'kg-20' };
const NEXT: ScaleCheckEvent = { type: 'next' };

/** The work on a platform in its order, each event with what stands on it then, in grams. */
export const PLATFORM_WORK: readonly (readonly [ScaleCheckEvent, number])[] = [
  [{ type: 'start', role: 'platform' }, 0],
  [NEXT, 0],
  [PICK_20, 0],
  [NEXT, 20_000],
  [NEXT, 0],
  [NEXT, 20_000],
  [NEXT, 20_000],
  [NEXT, 20_000],
  [NEXT, 20_000],
  [{ type: 'weight', weightId: 'kg-10' }, 20_000],
  [NEXT, 30_000],
  [NEXT, 20_000],
];

/** The work with a bottle on a bench in steps of 1 g, up to its full weighing. */
export const BOTTLE_WORK: readonly (readonly [ScaleCheckEvent, number])[] = [
  [{ type: 'start', role: 'bench' }, 0],
  [NEXT, 0],
  [{ type: 'weight', weightId: 'water-1' }, 0],
];

/** Plays events; a refusal on the way is a mistake of the test. */
export function playCheck(
  work: readonly (readonly [ScaleCheckEvent, number])[],
  divisionGrams = 50,
): ScaleCheckOutcome {
  return work.reduce<ScaleCheckOutcome>(
    ({ check }, [event, onScale]) => {
      const scale = makeBench(onScale, { division: { unit: 'g', value: divisionGrams } });
      const outcome = reduceScaleCheck(check, event, checkWorld(onScale, { scale }));
      if (outcome.refused !== null) throw new Error(`the test's own ${event.type}: ${outcome.refused}`);
      return outcome;
    },
    { check: NO_CHECK, effects: [], refused: null },
  );
}

const AFTER: Readonly<Record<Exclude<ScaleCheckStep, 'bottle'>, number>> = {
  idle: 0,
  zero: 1,
  weight: 2,
  middle: 3,
  off: 4,
  corner: 5,
  second: 9,
  both: 10,
  down: 11,
  result: 12,
};

/** The check at a step: with 20 kg on the platform, but at `bottle`, which is the bench's. */
export function checkAt(step: ScaleCheckStep): ScaleCheck {
  return step === 'bottle'
    ? playCheck(BOTTLE_WORK, 1).check
    : playCheck(PLATFORM_WORK.slice(0, AFTER[step])).check;
}

/** The scale a step of {@link checkAt} is about. */
export function roleAt(step: ScaleCheckStep): ScaleRole {
  return step === 'bottle' ? 'bench' : 'platform';
}

/** What must lie on the scale for a step's `next` to be taken, in grams. */
export const RIGHT_LOAD: Readonly<Record<ScaleCheckStep, number>> = {
  idle: 0,
  zero: 0,
  weight: 0,
  bottle: 30,
  middle: 20_000,
  off: 0,
  corner: 20_000,
  second: 0,
  both: 30_000,
  down: 20_000,
  result: 0,
};
