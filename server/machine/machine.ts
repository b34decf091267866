import type { BoardSenses } from '../../hardware/board/sensors.ts';
import type { Timers } from '../../hardware/serial/timers.ts';
import type { MachineView } from '../../shared/machine.ts';

/** How often the board is asked: undervoltage comes and goes with what is plugged in. */
const LOOK_EVERY_MS = 5000;

/** The board under the kiosk, watched. */
export interface Machine {
  view(): MachineView;
  /** What the board told last. */
  senses(): BoardSenses;
  stop(): void;
}

/** What the board is watched through. */
export interface MachineWatch {
  readonly sense: () => BoardSenses;
  readonly timers: Timers;
  /** Called when the view is another. */
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
}

function isHot({ celsius, limitCelsius }: BoardSenses): boolean {
  return celsius !== null && limitCelsius !== null && celsius >= limitCelsius;
}

/** Watches the board's supply and temperature, and remembers that the supply was low. */
export function watchMachine({ sense, timers, changed, log }: MachineWatch): Machine {
  let senses = sense();
  let wasLow = senses.supply === 'low';
  let next = timers.set(look, LOOK_EVERY_MS);

  function look(): void {
    const before = senses;
    senses = sense();
    wasLow ||= senses.supply === 'low';
    if (senses.supply !== before.supply) log(`the supply of the board is ${senses.supply}`, null);
    if (senses.supply !== before.supply || isHot(senses) !== isHot(before)) changed();
    next = timers.set(look, LOOK_EVERY_MS);
  }

  return {
    view: () => ({
      supply: wasLow && senses.supply !== 'low' ? 'was-low' : senses.supply,
      hot: isHot(senses),
    }),
    senses: () => senses,
    stop: () => timers.clear(next),
  };
}
