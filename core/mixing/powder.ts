import type { Mass } from '../quantity/mass.ts';

/** What the scale says of the powder that should have arrived. */
export type PowderVerdict = 'none' | 'whole' | 'part' | 'too-much';

/** The share by which a packet's powder may differ from its printed mass on any scale (our own guard). */
const LEAST_SLACK = 0.06;
/** The share that is the packet's own; the scale's step comes on top, since a rise is the difference of two readings. */
const OWN_SLACK = 0.04;
/** A rise further than this share from the packet is not the packet, however coarse the scale. */
const WIDEST_SLACK = 0.08;

/** Whether a scale's steps are too large to see whether a whole packet arrived. */
export function isTooCoarse(packet: Mass, division: Mass): boolean {
  return OWN_SLACK * packet.value + division.value > WIDEST_SLACK * packet.value;
}

/**
 * Judges the rise on the scale after the water: no powder yet, the whole packet, a part of it, or more than one.
 *
 * The band is 6 % of the packet, or 4 % and a division, whichever is wider; a scale on which that would pass 8 % is
 * too coarse and sees nothing.
 */
export function judgePowder(rise: Mass, packet: Mass, division: Mass): PowderVerdict {
  if (isTooCoarse(packet, division)) return 'none';
  const slack = Math.max(LEAST_SLACK * packet.value, OWN_SLACK * packet.value + division.value);
  if (rise.value < slack) return 'none';
  if (rise.value > packet.value + slack) return 'too-much';
  return rise.value >= packet.value - slack ? 'whole' : 'part';
}

/** A part that is weighed in is right within this share of its target, or two steps of the scale (our own guard). */
const PART_SLACK = 0.03;

/** Judges the rise of a part of a packet against its target; the strength follows from it, whatever it is. */
export function judgePart(rise: Mass, target: Mass, division: Mass): PowderVerdict {
  const step = 2 * division.value;
  const slack = Math.max(PART_SLACK * target.value, step);
  if (rise.value < step) return 'none';
  if (rise.value > target.value + slack) return 'too-much';
  return rise.value >= target.value - slack ? 'whole' : 'part';
}
