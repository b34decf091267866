import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { packetById, regimenById } from '../../../core/medicine/formulary.ts';
import { type RegimenInForce, regimenInForce } from '../../../core/medicine/in-force.ts';
import type { Packet } from '../../../core/medicine/presentation.ts';
import type { Regimen } from '../../../core/medicine/regimen.ts';

/** The shipped rule of an id, changed where told. */
export function makeRule(over: Partial<Regimen> = {}, id = 'levamisole-goat'): Regimen {
  const found = regimenById(SHIPPED, id);
  if (found === undefined) throw new Error(`no regimen ${id}`);
  return { ...found.regimen, ...over };
}

/** The shipped regimen of an id as a dose follows it, changed where told. */
export function makeRegimen(over: Partial<RegimenInForce> = {}, id = 'levamisole-goat'): RegimenInForce {
  const regimen = regimenInForce(makeRule({}, id), null);
  if (regimen === null) throw new Error(`regimen ${id} ships without a rate`);
  return { ...regimen, ...over };
}

/** The shipped packet of 52 g. */
export function makePacket(over: Partial<Packet> = {}): Packet {
  const found = packetById(SHIPPED, 'levamisole-52g');
  if (found === undefined) throw new Error('no packet of 52 g');
  return { ...found.packet, ...over };
}
