import type { Moment } from '../moment.ts';
import { grams, type Mass } from '../quantity/mass.ts';
import { unreachable } from '../unreachable.ts';
import type { Bench } from '../weighing/bench.ts';
import type { ScaleRole } from '../weighing/reading.ts';
import { leastLoad } from '../weighing/tolerance.ts';
import { type CheckSpot, CORNERS } from './check-record.ts';
import { type KnownWeight, knownWeight } from './known-weight.ts';
import type {
  ScaleCheck,
  ScaleCheckEvent,
  ScaleCheckOutcome,
  ScaleCheckRefusal,
  Underway,
} from './scale-check-state.ts';
import { scaleInCheck } from './scale-check-state.ts';
import { judgeCheck } from './verdict.ts';

/** What a check may look at while it takes a step. */
export interface ScaleCheckWorld {
  readonly now: Moment;
  readonly clockTrusted: boolean;
  readonly by: string;
  /** The scale being checked, watched for rest as under a dead weight. */
  readonly scale: Bench;
  readonly scaleReady: boolean;
  /** An id nobody has used, for the record this step may make. */
  readonly freshId: string;
}

/** The check before a scale is chosen. */
export const NO_CHECK: ScaleCheck = { step: 'idle' };

/** A check nobody touched for this long is given up, so that the platform comes back to the animals. */
export const CHECK_LEFT_MS = 15 * 60_000;
/** Less than this share of the weight on the scale is no weight on it: pounds taken for kilograms show 0.45. */
const SOMETHING = 0.25;

/** Takes one step of a scale check. Pure; intents that do not fit the step are refused. */
export function reduceScaleCheck(
  check: ScaleCheck,
  event: ScaleCheckEvent,
  world: ScaleCheckWorld,
): ScaleCheckOutcome {
  const since = world.now.uptimeMs;
  switch (event.type) {
    case 'start':
      if (scaleInCheck(check) !== null) return refuse(check, 'wrong-state');
      return go({ step: 'zero', role: event.role, restarted: false, since });
    case 'weight':
      return pickWeight(check, event.weightId, since);
    case 'next':
      return next(check, world);
    case 'skip':
      if (check.step !== 'second' && check.step !== 'both') return refuse(check, 'wrong-state');
      return finish(check.run, null, world);
    case 'cancel':
      return check.step === 'idle' ? refuse(check, 'wrong-state') : go(NO_CHECK);
    case 'link-lost':
      // What was read before the scale went away may have been another zero, unit or tare.
      if (scaleInCheck(check) !== event.role) return go(check);
      return go({
        step: 'zero',
        role: event.role,
        restarted: check.step !== 'zero' || check.restarted,
        since,
      });
    case 'tick': {
      const left = 'since' in check && since - check.since >= CHECK_LEFT_MS;
      return go(left ? NO_CHECK : check);
    }
    default:
      return unreachable(event);
  }
}

function go(check: ScaleCheck): ScaleCheckOutcome {
  return { check, effects: [], refused: null };
}

function refuse(check: ScaleCheck, refused: ScaleCheckRefusal): ScaleCheckOutcome {
  return { check, effects: [], refused };
}

function pickWeight(check: ScaleCheck, id: string, since: number): ScaleCheckOutcome {
  if (check.step !== 'weight' && check.step !== 'second') return refuse(check, 'wrong-state');
  const { role, division } = check.step === 'weight' ? check : check.run;
  const weight = knownWeight(role, id);
  if (weight === undefined) return refuse(check, 'no-such-weight');
  if (isTooLight(weight, division)) return refuse(check, 'weight-too-light');
  if (check.step === 'second') {
    // A second bottle would need its own empty weighing.
    if (weight.unit === 'L') return refuse(check, 'no-such-weight');
    return go({ step: 'both', run: check.run, second: weight, since });
  }
  const run: Underway = { role, division, weight, readings: check.readings };
  return go({ step: weight.unit === 'L' ? 'bottle' : 'middle', run, since });
}

/** Whether a weight is too light to tell anything on a scale of these divisions. */
export function isTooLight(weight: KnownWeight, division: Mass): boolean {
  return weight.mass.value < leastLoad(division).value;
}

/** The scale at rest, or why it cannot be used. */
function atRest({ scale, scaleReady }: ScaleCheckWorld): Mass | ScaleCheckRefusal {
  if (!scaleReady || scale.live === null) return 'scale-not-ready';
  if (scale.net) return 'scale-tared';
  return scale.steady ?? 'scale-moving';
}

function next(check: ScaleCheck, world: ScaleCheckWorld): ScaleCheckOutcome {
  if (check.step === 'result') return go(NO_CHECK);
  if (check.step === 'idle' || check.step === 'weight' || check.step === 'second')
    return refuse(check, 'wrong-state');
  const shown = atRest(world);
  if (typeof shown === 'string') return refuse(check, shown);
  const since = world.now.uptimeMs;
  if (check.step === 'zero') return atZero(check.role, check, shown, world);
  const { run } = check;
  const least = SOMETHING * run.weight.mass.value;
  if (check.step === 'off') {
    return shown.value > least
      ? refuse(check, 'weight-still-on')
      : afterOff(noted(run, 'returned', shown), since);
  }
  if (check.step === 'bottle') {
    if (shown.value < run.division.value) return refuse(check, 'nothing-on-scale');
    if (shown.value >= least) return refuse(check, 'weight-still-on');
    return go({ step: 'middle', run: noted(run, 'bottle', shown), since });
  }
  if (shown.value < least) return refuse(check, 'nothing-on-scale');
  switch (check.step) {
    case 'middle':
      return go({ step: 'off', run: noted(run, 'middle', shown), since });
    case 'corner': {
      const after = CORNERS[CORNERS.indexOf(check.corner) + 1];
      const done = noted(run, check.corner, shown);
      return go(
        after === undefined
          ? { step: 'second', run: done, since }
          : { step: 'corner', run: done, corner: after, since },
      );
    }
    case 'both':
      return go({ step: 'down', run: noted(run, 'both', shown), second: check.second, since });
    case 'down':
      return finish(noted(run, 'down', shown), check.second, world);
    default:
      return unreachable(check);
  }
}

/** Zero is where the scale shows it: nearer to zero than to the next step. */
function atZero(role: ScaleRole, check: ScaleCheck, shown: Mass, world: ScaleCheckWorld): ScaleCheckOutcome {
  const division = world.scale.division ?? grams(1);
  if (Math.abs(shown.value) > division.value / 2) return refuse(check, 'not-at-zero');
  return go({
    step: 'weight',
    role,
    division,
    readings: [{ spot: 'zero', shown }],
    since: world.now.uptimeMs,
  });
}

/** Corners are a platform's: a bench pan is too small to have any. */
function afterOff(run: Underway, since: number): ScaleCheckOutcome {
  return go(
    run.role === 'platform'
      ? { step: 'corner', run, corner: CORNERS[0], since }
      : { step: 'second', run, since },
  );
}

function noted(run: Underway, spot: CheckSpot, shown: Mass): Underway {
  return { ...run, readings: [...run.readings, { spot, shown }] };
}

function finish(run: Underway, second: KnownWeight | null, world: ScaleCheckWorld): ScaleCheckOutcome {
  const record = {
    id: world.freshId,
    ...run,
    second,
    ...judgeCheck({ ...run, second }),
    atMs: world.now.wallMs,
    by: world.by,
    clockTrusted: world.clockTrusted,
  };
  return { check: { step: 'result', record }, effects: [{ do: 'store-check', record }], refused: null };
}
