import type { Draws } from './draws.ts';
import type { ParameterSet } from './parameters.ts';
import { addBump, createSignal, FINE_HZ, risen, type Signal } from './signal.ts';
import { addWandering } from './wandering.ts';

/** An animal walking on and off again, leg by leg. */
export interface Landing {
  /** The share of its weight on the deck over time, with the knock of every foot. */
  readonly share: Signal;
  /** When the last foot has taken up its load, in seconds. */
  readonly lastFootOn: number;
  readonly halfOn: boolean;
}

/**
 * Draws how an animal comes and goes; the first foot lands at `from`, the first leaves `stands` after the last landed.
 *
 * An animal with feet on deck and ground shares its weight between them as it likes, so that what the deck carries
 * then wanders far more than under an animal with all feet on.
 */
export function landLegs(
  draws: Draws,
  set: ParameterSet,
  from: number,
  stands: number,
  seconds: number,
): Landing {
  const fore = draws.within([0.5, 0.62]);
  const halves = [draws.within([0.45, 0.55]), draws.within([0.45, 0.55])] as const;
  const shares = [
    fore * halves[0],
    fore * (1 - halves[0]),
    (1 - fore) * halves[1],
    (1 - fore) * (1 - halves[1]),
  ];
  const halfOn = draws.chance(set.halfOn.chance);
  const walk = draws.within(set.walkOn);
  const middle = [draws.within([0.05, 0.45]), draws.within([0.45, 0.9])] as const;
  const pause = halfOn ? draws.within(set.halfOn.lasts) : 0;
  const lands = [from, from + middle[0] * walk, from + middle[1] * walk + pause, from + walk + pause];
  const rises = lands.map(() => draws.within(set.legRise));
  const lastFootOn = Math.max(...lands.map((at, leg) => at + (rises[leg] ?? 0)));
  const off = draws.within(set.walkOn);
  const leaves = [0, draws.within([0.1, 0.4]), draws.within([0.5, 0.9]), 1].map(
    (part) => lastFootOn + stands + part * off,
  );
  const share = createSignal(seconds);
  for (let i = 0; i < share.length; i += 1) {
    const t = i / FINE_HZ;
    let sum = 0;
    for (let leg = 0; leg < 4; leg += 1) {
      const on = risen(t, lands[leg] ?? 0, rises[leg] ?? 1);
      sum += (shares[leg] ?? 0) * (on - risen(t, leaves[leg] ?? 0, 0.15));
    }
    share[i] = sum;
  }
  for (const [leg, at] of lands.entries()) {
    addBump(
      share,
      at + (rises[leg] ?? 0) / 2,
      rises[leg] ?? 1,
      draws.within([0.02, 0.2]) * (shares[leg] ?? 0),
    );
  }
  const between = createSignal(seconds);
  addWandering(draws, between, draws.within([0.015, 0.05]), draws.within([0.2, 0.6]));
  for (let i = 0; i < share.length; i += 1) {
    const on = share[i] ?? 0;
    const shared = 4 * Math.max(0, on * (1 - on));
    share[i] = on * (1 + shared * (between[i] ?? 0));
  }
  return { share, lastFootOn, halfOn };
}
