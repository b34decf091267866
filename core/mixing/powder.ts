import type { Mass } from '../quantity/mass.ts';

/** What the scale says of the powder that should have arrived. */
export type PowderVerdict = 'none' | 'whole' | 'part' | 'too-much';

/** The share by which a packet's powder may differ from its printed mass (our own guard). */
const PACKET_SLACK = 0.06;
/** However coarse the scale, a rise further than this share from the packet is not the packet. */
const WIDEST_SLACK = 0.25;

/** Whether a scale's steps are too large to tell a packet from half of one or one and a half. */
export function isTooCoarse(packet: Mass, division: Mass): boolean {
  // A rise is the difference of two readings, so it may be a whole division off either way.
  return division.value > (packet.value * WIDEST_SLACK) / 1.25;
}

/**
 * Judges the rise on the scale after the water: no powder yet, the whole packet, a part of it, or more than one.
 *
 * The band is 6 % of the packet or three divisions of the scale, whichever is wider, and never more than a quarter
 * of the packet. A scale that is too coarse for that sees nothing.
 */
export function judgePowder(rise: Mass, packet: Mass, division: Mass): PowderVerdict {
  if (isTooCoarse(packet, division)) return 'none';
  const slack = Math.min(
    packet.value * WIDEST_SLACK,
    Math.max(packet.value * PACKET_SLACK, 3 * division.value),
  );
  if (rise.value < slack) return 'none';
  if (rise.value > packet.value + slack) return 'too-much';
  return rise.value >= packet.value - slack ? 'whole' : 'part';
}
