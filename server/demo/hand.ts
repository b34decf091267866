import type { ScaleCheck } from '../../core/checking/scale-check-state.ts';
import { grams } from '../../core/quantity/mass.ts';
import { waterReading } from '../../core/water/density.ts';
import type { ScaleRole } from '../../core/weighing/reading.ts';
import type { SimulatedBarn } from '../../hardware/simulator/barn.ts';
import type { Memory } from '../barn/memory.ts';

/** An empty bottle and a cup half full of water weigh this, in grams (invented). */
const BOTTLE = 45;
const CUP = 180;
/** How far the demo's hand is off at each delivery, as a share: a little too little, and never twice the same (invented). */
const HAND_BIAS = -0.004;
const HAND_SPREAD = 0.006;

/** The hand that puts weights and cups on the demo's scales. */
export interface Hand {
  /** Does what the check under way asks for now; without one, clears both scales of what it left there. */
  doAsked(memory: Memory): void;
  /** Takes all that it put on a scale off again. */
  clear(role: ScaleRole): void;
}

/** Makes a hand; `random` gives 0 (included) to 1 (excluded). */
export function createHand(barn: SimulatedBarn, random: () => number): Hand {
  const on = { platform: 0, bench: 0 };

  function leave(role: ScaleRole, wanted: number): void {
    const change = grams(wanted - on[role]);
    on[role] = wanted;
    if (change.value === 0) return;
    if (role === 'platform') barn.platform.leaveOn(change);
    else barn.bench.putOn(change);
  }

  return {
    clear: (role) => leave(role, 0),
    doAsked({ check, syringeCheck }) {
      const asked = askedOf(check);
      if (asked !== null) leave(asked.role, asked.grams);
      else if (syringeCheck.step === 'cup') leave('bench', CUP);
      else if (syringeCheck.step === 'deliver') {
        const { mark, temperature } = syringeCheck.task;
        const off = HAND_BIAS + HAND_SPREAD * (2 * random() - 1);
        leave('bench', on.bench + waterReading(mark, temperature).value * (1 + off));
      } else {
        leave('platform', 0);
        leave('bench', 0);
      }
    },
  };
}

/** What is to stand on the scale in this step of its check, in grams; `null` where no weighing is asked for. */
function askedOf(check: ScaleCheck): { readonly role: ScaleRole; readonly grams: number } | null {
  switch (check.step) {
    case 'idle':
    case 'weight':
    case 'second':
    case 'result':
      return null;
    case 'zero':
      return { role: check.role, grams: 0 };
    default: {
      const { role, weight } = check.run;
      const bottle = weight.unit === 'L' ? BOTTLE : 0;
      const whole = weight.mass.value + bottle;
      if (check.step === 'off') return { role, grams: 0 };
      if (check.step === 'bottle') return { role, grams: bottle };
      return { role, grams: check.step === 'both' ? whole + check.second.mass.value : whole };
    }
  }
}
