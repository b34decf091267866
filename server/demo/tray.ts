import { packetById } from '../../core/medicine/formulary.ts';
import { grams } from '../../core/quantity/mass.ts';
import { scale } from '../../core/quantity/quantity.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { SimulatedBarn } from '../../hardware/simulator/barn.ts';
import type { TrayAction } from '../../shared/tray.ts';
import type { Memory } from '../barn/memory.ts';
import { ASKED_POUR, askedInWork } from './asked.ts';
import { createHand } from './hand.ts';

/** The empty jug of the demo weighs this, in grams (invented). */
const EMPTY_JUG = 312;
/** The packet poured in where none is being mixed, in grams. */
const SPARE_PACKET = 52;

/** Two bench scales: step, and the most it carries (invented). */
const KITCHEN_BENCH = [grams(1), grams(5000)] as const;
const FINE_BENCH = [grams(0.01), grams(500)] as const;

/** Moves the simulated devices as the bench tray asks. Returns false where the animal named does not exist or has no tag. */
export function createTray(
  barn: SimulatedBarn,
  random: () => number,
): (action: TrayAction, memory: Memory) => boolean {
  let jugStands = false;
  const hand = createHand(barn, random);
  function liftJug(): void {
    if (jugStands) barn.bench.liftJug();
    jugStands = false;
    hand.clear('bench');
  }
  function placeJug(): void {
    if (!jugStands) barn.bench.placeJug(grams(EMPTY_JUG));
    jugStands = true;
  }
  /** Whether the work under way asked for something on the scales, which is then done. */
  function didAsked(memory: Memory): boolean {
    const asked = askedInWork(memory);
    switch (asked?.do) {
      case undefined:
        return false;
      case 'place-jug':
        placeJug();
        return true;
      case 'pour':
        barn.bench.pour(ASKED_POUR, grams(asked.grams));
        return true;
      case 'add-powder':
        barn.bench.addPowder(packetMass(memory));
        return true;
      case 'walk-off':
        barn.platform.walkOff();
        return true;
      default: {
        const animal = memory.animals.find(({ id }) => id === asked?.animalId);
        if (animal?.tag == null) return false;
        barn.wand.presentTag(animal.tag);
        barn.platform.leadOn({ mass: animal.lastWeight?.mass ?? grams(40_000), grade: 'calm' });
        return true;
      }
    }
  }
  return (action, memory) => {
    switch (action.do) {
      case 'lead-on': {
        const animal = memory.animals.find((candidate) => candidate.id === action.animalId);
        if (animal === undefined) return false;
        const mass = action.grams === null ? (animal.lastWeight?.mass ?? grams(40_000)) : grams(action.grams);
        barn.platform.leadOn({ mass, grade: action.grade });
        return true;
      }
      case 'walk-off':
        barn.platform.walkOff();
        hand.clear('platform');
        return true;
      case 'present-tag': {
        const tag = memory.animals.find((animal) => animal.id === action.animalId)?.tag ?? null;
        if (tag === null) return false;
        barn.wand.presentTag(tag);
        return true;
      }
      case 'place-jug':
        placeJug();
        return true;
      case 'lift-jug':
        liftJug();
        return true;
      case 'pour':
        if (action.gramsPerSecond > 0) barn.bench.pour(grams(action.gramsPerSecond));
        else barn.bench.stopPour();
        return true;
      case 'add-powder':
        barn.bench.addPowder(scale(packetMass(memory), action.packets));
        return true;
      case 'as-asked':
        if (didAsked(memory)) return true;
        // A check begins with an empty scale.
        if (jugStands) liftJug();
        hand.doAsked(memory);
        return true;
      case 'swap-bench':
        barn.bench.becomeAnother(...(action.fine ? FINE_BENCH : KITCHEN_BENCH));
        return true;
      case 'pull-cable':
        void barn.cables[action.role].pull();
        return true;
      case 'plug-cable':
        // One that could not be plugged stays pulled, as its lamp shows, and can be plugged again.
        barn.cables[action.role].plug().catch(() => undefined);
        return true;
      default:
        return unreachable(action);
    }
  };
}

function packetMass({ mixing, formulary }: Memory) {
  const packet = 'plan' in mixing ? packetById(formulary, mixing.plan.packetId)?.packet : undefined;
  return grams(packet?.grossGrams.value ?? SPARE_PACKET);
}
