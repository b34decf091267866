import { unreachable } from '../../core/unreachable.ts';
import type { LinkState } from '../../hardware/serial/link-state.ts';

/** Why a role whose name leads to another role's device has no link. */
export const SHARED_TROUBLE = 'Another device of this kiosk uses the same port. Set one of the two up again.';

/** Why a link shows nothing and what to do, in a sentence; `null` while all is well. */
export function troubleOf(state: LinkState): string | null {
  switch (state.status) {
    case 'absent':
    case 'opening':
    case 'ready':
      return null;
    case 'settling':
      return state.stage === 'probe' && state.attempt > 1
        ? 'It is plugged in but sends nothing this format can read. Check that it is switched on, and its format and speed.'
        : null;
    case 'silent':
      return 'It is plugged in but has stopped sending. Check that it is switched on.';
    case 'lost':
      return state.remedy;
    default:
      return unreachable(state);
  }
}
