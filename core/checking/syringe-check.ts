import { syringeById } from '../dosing/syringe.ts';
import type { Moment } from '../moment.ts';
import { grams, type Mass } from '../quantity/mass.ts';
import { subtract } from '../quantity/quantity.ts';
import { fromSteps, stepsIn } from '../quantity/round.ts';
import { celsius } from '../quantity/temperature.ts';
import { millilitres } from '../quantity/volume.ts';
import { unreachable } from '../unreachable.ts';
import { waterReading } from '../water/density.ts';
import type { Bench } from '../weighing/bench.ts';
import { CHECK_LEFT_MS } from './scale-check.ts';
import type {
  SyringeCheck,
  SyringeCheckEvent,
  SyringeCheckOutcome,
  SyringeCheckRefusal,
  SyringeTask,
} from './syringe-check-state.ts';
import { DELIVERIES, divisionFor, syringeFindings } from './syringe-findings.ts';

/** What a check may look at while it takes a step. */
export interface SyringeCheckWorld {
  readonly now: Moment;
  readonly clockTrusted: boolean;
  readonly by: string;
  readonly bench: Bench;
  readonly benchReady: boolean;
  /** An id nobody has used, for the record this step may make. */
  readonly freshId: string;
}

/** The check before a syringe is chosen. */
export const NO_SYRINGE_CHECK: SyringeCheck = { step: 'idle' };

/** A rise outside these shares of the mark's mass is not one delivery (our own guard). */
const LEAST_DELIVERY = 0.4;
const MOST_DELIVERY = 1.6;

type Delivering = Extract<SyringeCheck, { step: 'deliver' }>;

/** Takes one step of a syringe check. Pure; intents that do not fit the step are refused. */
export function reduceSyringeCheck(
  check: SyringeCheck,
  event: SyringeCheckEvent,
  world: SyringeCheckWorld,
): SyringeCheckOutcome {
  switch (event.type) {
    case 'start':
      return start(check, event, world);
    case 'next':
      return next(check, world);
    case 'leave-out':
      return leaveOut(check, world);
    case 'cancel':
      return check.step === 'idle' ? refuse(check, 'wrong-state') : go(NO_SYRINGE_CHECK);
    case 'link-lost':
      // Deliveries weighed before the scale went away cannot be joined to those after it.
      return check.step === 'deliver'
        ? go({ step: 'cup', task: check.task, since: world.now.uptimeMs })
        : go(check);
    case 'tick': {
      const left = 'since' in check && world.now.uptimeMs - check.since >= CHECK_LEFT_MS;
      return go(left ? NO_SYRINGE_CHECK : check);
    }
    default:
      return unreachable(event);
  }
}

function go(check: SyringeCheck): SyringeCheckOutcome {
  return { check, effects: [], refused: null };
}

function refuse(check: SyringeCheck, refused: SyringeCheckRefusal): SyringeCheckOutcome {
  return { check, effects: [], refused };
}

function start(
  check: SyringeCheck,
  event: Extract<SyringeCheckEvent, { type: 'start' }>,
  world: SyringeCheckWorld,
): SyringeCheckOutcome {
  if (check.step !== 'idle' && check.step !== 'result') return refuse(check, 'wrong-state');
  const syringe = syringeById(event.syringeId);
  if (syringe === undefined) return refuse(check, 'no-such-syringe');
  const { capacity, graduation } = syringe;
  const mark = fromSteps(stepsIn(event.markMl, graduation.value, 'nearest'), graduation.value);
  const isMark = Math.abs(mark - event.markMl) < 1e-6 && mark > 0 && mark <= capacity.value;
  if (!isMark) return refuse(check, 'no-such-mark');
  if (!(event.celsius >= 1 && event.celsius <= 40)) return refuse(check, 'temperature-out-of-range');
  const task = { syringe, mark: millilitres(mark), temperature: celsius(event.celsius) };
  if (isTooCoarse(task, world.bench.division)) return refuse(check, 'too-coarse-for-syringe');
  return go({ step: 'cup', task, since: world.now.uptimeMs });
}

function isTooCoarse({ syringe, mark }: SyringeTask, division: Mass | null): boolean {
  return division !== null && division.value > divisionFor(syringe, mark).value * (1 + 1e-9);
}

/** The bench at rest, or why it cannot be used. */
function atRest(world: SyringeCheckWorld): Mass | SyringeCheckRefusal {
  if (!world.benchReady || world.bench.live === null) return 'bench-not-ready';
  return world.bench.steady ?? 'bench-moving';
}

function next(check: SyringeCheck, world: SyringeCheckWorld): SyringeCheckOutcome {
  switch (check.step) {
    case 'idle':
      return refuse(check, 'wrong-state');
    case 'result':
      return go(NO_SYRINGE_CHECK);
    case 'cup': {
      const shown = atRest(world);
      if (typeof shown === 'string') return refuse(check, shown);
      const { task } = check;
      const division = world.bench.division ?? grams(1);
      if (isTooCoarse(task, division)) return refuse(check, 'too-coarse-for-syringe');
      const { net } = world.bench;
      const since = world.now.uptimeMs;
      return go({ step: 'deliver', task, division, net, last: shown, delivered: [], leftOut: 0, since });
    }
    case 'deliver':
      return deliver(check, world);
    default:
      return unreachable(check);
  }
}

function deliver(check: Delivering, world: SyringeCheckWorld): SyringeCheckOutcome {
  const shown = atRest(world);
  if (typeof shown === 'string') return refuse(check, shown);
  if (world.bench.net !== check.net) return refuse(check, 'tared-mid-way');
  const { syringe, mark, temperature } = check.task;
  const rise = subtract(shown, check.last);
  const expected = waterReading(mark, temperature).value;
  if (rise.value < LEAST_DELIVERY * expected) return refuse(check, 'nothing-delivered');
  if (rise.value > MOST_DELIVERY * expected) return refuse(check, 'more-than-one-delivery');
  const delivered = [...check.delivered, rise];
  if (delivered.length < DELIVERIES)
    return go({ ...check, last: shown, delivered, since: world.now.uptimeMs });
  const { division, leftOut } = check;
  const record = {
    id: world.freshId,
    syringeId: syringe.id,
    temperature,
    division,
    delivered,
    leftOut,
    findings: syringeFindings({ ...check.task, division, delivered, leftOut }),
    atMs: world.now.wallMs,
    by: world.by,
    clockTrusted: world.clockTrusted,
  };
  return { check: { step: 'result', record }, effects: [{ do: 'store-check', record }], refused: null };
}

/** What is in the cup now becomes the new beginning; the delivery that went wrong is counted as left out. */
function leaveOut(check: SyringeCheck, world: SyringeCheckWorld): SyringeCheckOutcome {
  if (check.step !== 'deliver') return refuse(check, 'wrong-state');
  const shown = atRest(world);
  if (typeof shown === 'string') return refuse(check, shown);
  if (world.bench.net !== check.net) return refuse(check, 'tared-mid-way');
  return go({ ...check, last: shown, leftOut: check.leftOut + 1, since: world.now.uptimeMs });
}
