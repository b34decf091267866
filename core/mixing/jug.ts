import type { Mass } from '../quantity/mass.ts';
import type { Strength } from '../quantity/strength.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';
import type { Pieces } from '../stock/pieces.ts';

/** What a mix stood in and weighed when it was put in service: by this the jug in hand is proved on the bench. */
export interface JugWeighed {
  readonly vesselId: string;
  /** The letter on the jug it was mixed in. */
  readonly letter: string;
  /** What that jug weighs empty, gross. */
  readonly empty: Mass;
  /** Water and powder together, as the scale saw them. */
  readonly contents: Mass;
  /** Standard uncertainty of the two together (k = 1). */
  readonly uncertainty: Mass;
}

/** Where the powder of a jug, or a bottle, came from in the farm's stock. */
export interface JugLot {
  readonly lotId: string;
  /** The number printed; `null` where none could be read. */
  readonly lot: string | null;
  /** Milliseconds since 1970 when its printed month is over. */
  readonly expiresAtMs: number;
  /** How many packets or bottles went in. */
  readonly pieces: Pieces;
}

/** A jug of mixed medicine, from the day it was put in service. */
export interface Jug {
  readonly id: string;
  /** The number written on the jug: small, counted up, shown large when the jug in hand is proved. */
  readonly number: number;
  readonly medicineId: string;
  readonly packetId: string;
  readonly strength: Strength;
  /** Standard uncertainty of the strength as a share of it (k = 1). */
  readonly relative: number;
  readonly volume: Volume;
  /** Milliseconds since 1970. */
  readonly mixedAtMs: number;
  /** Milliseconds since 1970 after which the jug is no longer good. */
  readonly useByMs: number;
  /** Who mixed it. */
  readonly by: string;
  /** Whether the clock was trusted when it was mixed. */
  readonly clockTrusted: boolean;
  /** Milliseconds since 1970 when it was poured away; `null` while it is kept. */
  readonly discardedAtMs: number | null;
  /** `null` for a jug of which the empty mass was never learned. */
  readonly weighed: JugWeighed | null;
  /** `null` where it did not come from the stock. */
  readonly stock: JugLot | null;
  /** Sum of what was drawn from it, from the day book. */
  readonly drawn: Volume;
  /** Standard uncertainty of that sum (k = 1): one syringe is off the same way at every draw, so they add. */
  readonly drawnDoubt: Volume;
  /** How many draws that were. */
  readonly draws: number;
}

/** Whether a jug can be dosed from, and if not, why. */
export type JugLife = 'in-life' | 'past-use-by' | 'empty' | 'discarded';

/** What is left in a jug; never below zero. */
export function remaining(jug: Jug): Volume {
  return millilitres(Math.max(0, jug.volume.value - jug.drawn.value));
}

/** Whether a jug can be dosed from now. */
export function jugLife(jug: Jug, wallMs: number): JugLife {
  if (jug.discardedAtMs !== null) return 'discarded';
  if (remaining(jug).value <= 0) return 'empty';
  return wallMs >= jug.useByMs ? 'past-use-by' : 'in-life';
}

/** Whether a jug may be taken in hand: in life, or of an age that a clock nobody trusts cannot tell. */
export function mayBeInUse(jug: Jug, wallMs: number, clockTrusted: boolean): boolean {
  const life = jugLife(jug, wallMs);
  return life === 'in-life' || (life === 'past-use-by' && !clockTrusted);
}

/** Whether another jug of the same medicine that may be in use makes it easy to pick up the wrong one. */
export function hasRival(jug: Jug, jugs: readonly Jug[], wallMs: number, clockTrusted: boolean): boolean {
  return jugs.some(
    (other) =>
      other.id !== jug.id && other.medicineId === jug.medicineId && mayBeInUse(other, wallMs, clockTrusted),
  );
}
