import { unreachable } from '../../core/unreachable.ts';
import type { ScaleRole } from '../../core/weighing/reading.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { DeviceRole } from '../../shared/tray.ts';
import type { BarnContext } from './barn-context.ts';
import { benchInCheck } from './check-intents.ts';

/** The intents of a device's set-up. */
export type SetupIntent = Extract<
  Intent,
  {
    type:
      | 'ports-look'
      | 'device-listen'
      | 'device-try'
      | 'device-lines'
      | 'device-patterns'
      | 'device-prove'
      | 'device-no-tare'
      | 'device-division'
      | 'device-keep'
      | 'device-drop'
      | 'device-remove';
  }
>;

/** Carries out one intent of a device's set-up. Throws when the disk refuses. */
export function setUpDevice(barn: BarnContext, intent: SetupIntent): Refusal | null {
  const { setup } = barn;
  if (typeof setup === 'string') return setup;
  switch (intent.type) {
    case 'ports-look':
      return setup.look();
    case 'device-listen':
      return busy(barn, intent.role) ?? setup.listen(intent.role, intent.path);
    case 'device-try':
      return setup.try(intent.role, intent.index);
    case 'device-lines':
      return setup.lines();
    case 'device-patterns':
      return setup.patterns();
    case 'device-prove':
      return setup.prove(intent.loadId);
    case 'device-no-tare':
      return setup.neverTared();
    case 'device-division':
      return setup.countsIn(intent.lastDigits);
    case 'device-keep': {
      const view = setup.view();
      const why = 'role' in view ? busy(barn, view.role) : null;
      return why ?? setup.keep();
    }
    case 'device-drop':
      return setup.drop();
    case 'device-remove':
      return busy(barn, intent.role) ?? setup.remove(intent.role);
    default:
      return unreachable(intent);
  }
}

/** A jug half mixed, or a check half done, is weighed to its end on one scale. */
function busy({ memory }: BarnContext, role: DeviceRole): Refusal | null {
  const mixes = memory.mixing.step !== 'idle' && memory.mixing.step !== 'label';
  const inUse = mixes || benchInCheck(memory);
  return role === 'bench' && inUse ? 'bench-in-use' : null;
}

/** Up to here what a scale shows is dirt or drift, in divisions or grams, whichever is more; beyond, something stands on it. */
const SMALL_LOAD: Readonly<Record<ScaleRole, { readonly divisions: number; readonly grams: number }>> = {
  platform: { divisions: 5, grams: 1000 },
  bench: { divisions: 5, grams: 20 },
};

/**
 * Asks a scale to take what it shows for zero: only in gross, with nothing on it and no jug being mixed.
 *
 * Zeroed under an animal or a jug, every later weight would be wrong by it and look right.
 */
export function zeroScale(barn: BarnContext, role: ScaleRole): Refusal | null {
  const { memory, linkOf } = barn;
  const { live, division, moving } = role === 'platform' ? memory.deck : memory.bench;
  if (linkOf(role) !== 'ready' || live === null) return 'scale-not-ready';
  if (role === 'bench' && memory.bench.net) return 'scale-tared';
  const small = SMALL_LOAD[role];
  const most = Math.max(small.grams, small.divisions * (division?.value ?? 0));
  if (live.value > most || (role === 'platform' && memory.deck.onSince !== null)) return 'something-on-scale';
  // A scale in motion takes no zero, and most say nothing of it.
  if (moving) return 'scale-moving';
  const why = busy(barn, role);
  if (why !== null) return why;
  const answer = barn.zero(role);
  switch (answer) {
    case 'sent':
      return null;
    case 'no-command':
      return 'no-zero-command';
    case 'not-ready':
      return 'scale-not-ready';
    default:
      return unreachable(answer);
  }
}
