import { systemTimers } from '../../../hardware/serial/timers.ts';
import type { BarnContext } from '../../../server/barn/barn-context.ts';
import { machinePage } from '../../../server/machine/page.ts';
import type { Outlet } from '../../../server/speech/outlet.ts';
import { createSpeaker, type Speaker } from '../../../server/speech/speaker.ts';
import { NO_UPKEEP } from '../../../server/upkeep/upkeep.ts';
import type { Standing } from '../../../server/view/state-view.ts';
import type { MachinePage } from '../../../shared/machine.ts';
import { closedNetwork } from './closed-network.ts';
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

/** The page of a board that is well and keeps no records. */
export function quietMachine(): MachinePage {
  const view = { supply: 'good', hot: false } as const;
  const senses = { supply: 'good', celsius: 48.3, limitCelsius: 80 } as const;
  return machinePage({ view: () => view, senses: () => senses, stop: () => {} }, null, '1.2.3');
}

/** What stands around a barn that runs well, has no device, is not heard and hears nobody, with parts of it put in place. */
export function quietStanding(barn: BarnContext, parts: Partial<Standing> = {}): Standing {
  return {
    bootId: 'boot',
    demo: false,
    practice: false,
    problem: null,
    devices: () => [],
    voice: parts.voice ?? quietSpeaker(barn).view,
    ear: () => offView(barn.memory.settings.ear, 0),
    keeping: NO_UPKEEP.view,
    machine: () => ({ supply: 'good', hot: false }),
    network: () => closedNetwork().view(),
    ...parts,
  };
}
