import { calendarStart, sameTimeLater, type TimeZone } from '../dosing/local-time.ts';
import type { Medicine } from '../medicine/medicine.ts';
import type { Liquid } from '../medicine/presentation.ts';
import type { Moment } from '../moment.ts';
import { mgPerMl } from '../quantity/strength.ts';
import { millilitres, type Volume } from '../quantity/volume.ts';
import type { Jug, JugLot } from './jug.ts';

/** The month printed on a bottle as its last. */
export interface Expiry {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
}

/** What is said of a bottle when it is opened. */
export interface Opening {
  readonly id: string;
  readonly number: number;
  readonly medicine: Medicine;
  readonly liquid: Liquid;
  /** What the bottle holds by its label. */
  readonly volume: Volume;
  readonly expiry: Expiry;
  readonly now: Moment;
  readonly timeZone: TimeZone;
  readonly by: string;
  readonly clockTrusted: boolean;
  /** The lot it was taken from; `null` where it does not come from the stock. */
  readonly stock?: JugLot | null;
}

/** The instant a printed month is over, on the farm's clocks. */
export function expiresAt({ year, month }: Expiry, zone: TimeZone): number {
  return calendarStart(year, month + 1, 1, zone);
}

/** A bottle put in use: good until its days open are over or its printed month, whichever is first. */
export function openBottle(opening: Opening): Jug {
  const { medicine, liquid, now, timeZone } = opening;
  const openUntil = sameTimeLater(now.wallMs, liquid.openLifeDays.value, timeZone);
  return {
    id: opening.id,
    number: opening.number,
    medicineId: medicine.id,
    packetId: liquid.id,
    strength: mgPerMl(liquid.strength.value),
    relative: liquid.strengthUncertainty.value,
    volume: opening.volume,
    mixedAtMs: now.wallMs,
    useByMs: Math.min(openUntil, expiresAt(opening.expiry, timeZone)),
    by: opening.by,
    clockTrusted: opening.clockTrusted,
    discardedAtMs: null,
    weighed: null,
    stock: opening.stock ?? null,
    drawn: millilitres(0),
    drawnDoubt: millilitres(0),
    draws: 0,
  };
}
