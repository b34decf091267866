import { systemTimers } from '../../../hardware/serial/timers.ts';
import type { BarnContext } from '../../../server/barn/barn-context.ts';
import type { Outlet } from '../../../server/speech/outlet.ts';
import { createSpeaker, type Speaker } from '../../../server/speech/speaker.ts';
import type { Standing } from '../../../server/view/state-view.ts';
import { offView } from './off-view.ts';

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

/** What stands from start to stop in a kiosk that is neither heard nor hears, with parts of it put in place. */
export function quietStanding(barn: BarnContext, parts: Partial<Standing> = {}): Standing {
  return {
    bootId: 'boot',
    demo: false,
    problem: null,
    devices: () => [],
    voice: quietSpeaker(barn).view,
    ear: () => offView(barn.memory.settings.ear, 0),
    ...parts,
  };
}
