import type { Packet, Regimen } from '../../../core/medicine/formulary.ts';
import { packetById, regimenById } from '../../../core/medicine/medicines.ts';

/** The shipped regimen of an id, changed where told. */
export function makeRegimen(over: Partial<Regimen> = {}, id = 'levamisole-goat'): Regimen {
  const found = regimenById(id);
  if (found === undefined) throw new Error(`no regimen ${id}`);
  return { ...found.regimen, ...over };
}

/** The shipped packet of 52 g. */
export function makePacket(over: Partial<Packet> = {}): Packet {
  const found = packetById('levamisole-52g');
  if (found === undefined) throw new Error('no packet of 52 g');
  return { ...found.packet, ...over };
}
