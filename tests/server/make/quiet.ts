import { systemTimers } from '../../../hardware/serial/timers.ts';
import type { BarnContext } from '../../../server/barn/barn-context.ts';
import type { Outlet } from '../../../server/speech/outlet.ts';
import { createSpeaker, type Speaker } from '../../../server/speech/speaker.ts';

const NOWHERE: Outlet = {
  heard: () => 'no-page',
  words: () => false,
  say: (_, ended) => ended(),
  hush: () => {},
  sound: () => false,
};

/** The speaker of a barn that nobody hears. */
export function quietSpeaker(barn: BarnContext): Speaker {
  return createSpeaker({
    barn,
    timers: systemTimers(),
    mouth: null,
    outlet: NOWHERE,
    changed: () => {},
    log: () => {},
  });
}
