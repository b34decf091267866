import type { Medicine, Packet, Regimen } from './formulary.ts';
import { LEVAMISOLE } from './levamisole.ts';

/** Every medicine the kiosk ships with. */
export const MEDICINES: readonly Medicine[] = [LEVAMISOLE];

/** The medicine of an id, or `undefined`. */
export function medicineById(id: string): Medicine | undefined {
  return MEDICINES.find((medicine) => medicine.id === id);
}

/** A packet and the medicine it belongs to, or `undefined`. */
export function packetById(id: string): { medicine: Medicine; packet: Packet } | undefined {
  for (const medicine of MEDICINES) {
    const packet = medicine.packets.find((candidate) => candidate.id === id);
    if (packet !== undefined) return { medicine, packet };
  }
  return undefined;
}

/** A regimen and the medicine it belongs to, or `undefined`. */
export function regimenById(id: string): { medicine: Medicine; regimen: Regimen } | undefined {
  for (const medicine of MEDICINES) {
    const regimen = medicine.regimens.find((candidate) => candidate.id === id);
    if (regimen !== undefined) return { medicine, regimen };
  }
  return undefined;
}
