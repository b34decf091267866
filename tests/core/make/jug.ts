import type { Jug } from '../../../core/mixing/jug.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { millilitres, usQuarts } from '../../../core/quantity/volume.ts';
import { hoursAgo } from './time.ts';

/** A quart of levamisole mixed an hour ago by the packet, good for eleven hours more. */
export function makeJug(over: Partial<Jug> = {}): Jug {
  return {
    id: 'jug-7',
    number: 7,
    medicineId: 'levamisole',
    packetId: 'levamisole-52g',
    strength: mgPerMl(46_800 / 946.352946),
    relative: 0.005,
    volume: usQuarts(1),
    mixedAtMs: hoursAgo(1),
    useByMs: hoursAgo(-11),
    by: 'Kim',
    clockTrusted: true,
    discardedAtMs: null,
    weighed: null,
    stock: null,
    drawn: millilitres(0),
    drawnDoubt: millilitres(0),
    draws: 0,
    ...over,
  };
}
