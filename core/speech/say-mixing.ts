import type { Part, SayMemory } from './say-changes.ts';
import type { SayScene } from './say-scene.ts';
import type { PourCall } from './saying.ts';

/** The calls of a pour in their order; a lifted jug, in contrast, is called back each time. */
const CALLED_ONCE: readonly PourCall[] = ['slow', 'stop', 'over'];

/** The pour and the powder. */
export function sayMixing(before: SayMemory, scene: SayScene): Part {
  const pour = sayPour(before, scene.pour);
  const { powder } = scene;
  const changed = powder !== before.scene.powder && powder !== null && powder !== 'none';
  return {
    ...pour,
    sayings: [...(pour.sayings ?? []), ...(changed ? [{ what: 'powder', call: powder } as const] : [])],
  };
}

function sayPour({ scene: before, pourTold }: SayMemory, pour: SayScene['pour']): Part {
  if (pour === null) {
    return { hush: before.pour === null ? [] : ['pour'], memory: { pourTold: [] } };
  }
  if (pour === 'pour') return { memory: { pourTold: [] } };
  if (pour === before.pour || pourTold.includes(pour)) return {};
  const at = CALLED_ONCE.indexOf(pour);
  return {
    sayings: [{ what: 'pour', call: pour }],
    earcons: pour === 'stop' || pour === 'over' ? ['stop'] : [],
    // What comes before it is not called any more either: no "slow" after a "stop".
    ...(at < 0 ? {} : { memory: { pourTold: CALLED_ONCE.slice(0, at + 1) } }),
  };
}
