import type { Mass } from '../quantity/mass.ts';

/** What the scale says of the powder that should have arrived. */
export type PowderVerdict = 'none' | 'whole' | 'part' | 'too-much';

/** The share by which a packet's powder may differ from its printed mass (our own guard). */
const PACKET_SLACK = 0.06;

/**
 * Judges the rise on the scale after the water: no powder yet, the whole packet, a part of it, or more than one.
 *
 * The band is 6 % of the packet or three divisions of the scale, whichever is wider.
 */
export function judgePowder(rise: Mass, packet: Mass, division: Mass): PowderVerdict {
  const slack = Math.max(packet.value * PACKET_SLACK, 3 * division.value);
  if (rise.value < slack) return 'none';
  if (rise.value > packet.value + slack) return 'too-much';
  return rise.value >= packet.value - slack ? 'whole' : 'part';
}
