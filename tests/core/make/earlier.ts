import type { EarlierDose } from '../../../core/dosing/repeats.ts';
import { hoursAgo } from './time.ts';

/** A dose of levamisole to Anna some hours ago, by a clock that was trusted. */
export function makeEarlier(hours: number, over: Partial<EarlierDose> = {}): EarlierDose {
  return {
    animalId: 'anna',
    medicineId: 'levamisole',
    givenAtMs: hoursAgo(hours),
    clockTrusted: true,
    rest: null,
    ...over,
  };
}
