import type { Medicine } from './medicine.ts';
import type { Liquid, Packet, Presentation } from './presentation.ts';
import type { Regimen } from './regimen.ts';

/** Every medicine this kiosk knows: what it ships with, and what the farm added. */
export type Formulary = readonly Medicine[];

/** The medicine of an id, or `undefined`. */
export function medicineById(formulary: Formulary, id: string): Medicine | undefined {
  return formulary.find((medicine) => medicine.id === id);
}

/** A presentation and the medicine it belongs to, or `undefined`. */
export function presentationById(
  formulary: Formulary,
  id: string,
): { medicine: Medicine; presentation: Presentation } | undefined {
  for (const medicine of formulary) {
    const presentation = medicine.presentations.find((candidate) => candidate.id === id);
    if (presentation !== undefined) return { medicine, presentation };
  }
  return undefined;
}

/** A packet and the medicine it belongs to, or `undefined`. */
export function packetById(
  formulary: Formulary,
  id: string,
): { medicine: Medicine; packet: Packet } | undefined {
  const found = presentationById(formulary, id);
  if (found?.presentation.form !== 'powder') return undefined;
  return { medicine: found.medicine, packet: found.presentation };
}

/** A ready-made liquid and the medicine it belongs to, or `undefined`. */
export function liquidById(
  formulary: Formulary,
  id: string,
): { medicine: Medicine; liquid: Liquid } | undefined {
  const found = presentationById(formulary, id);
  if (found?.presentation.form !== 'liquid') return undefined;
  return { medicine: found.medicine, liquid: found.presentation };
}

/** The powders of a medicine that can be mixed. */
export function packetsOf(medicine: Medicine): Packet[] {
  return medicine.presentations.filter((presentation) => presentation.form === 'powder');
}

/** The liquids of a medicine that are dosed as they come. */
export function liquidsOf(medicine: Medicine): Liquid[] {
  return medicine.presentations.filter((presentation) => presentation.form === 'liquid');
}

/** A regimen and the medicine it belongs to, or `undefined`. */
export function regimenById(
  formulary: Formulary,
  id: string,
): { medicine: Medicine; regimen: Regimen } | undefined {
  for (const medicine of formulary) {
    const regimen = medicine.regimens.find((candidate) => candidate.id === id);
    if (regimen !== undefined) return { medicine, regimen };
  }
  return undefined;
}

/** The rules of a medicine for a species. */
export function regimensFor(medicine: Medicine, species: Regimen['species']): Regimen[] {
  return medicine.regimens.filter((regimen) => regimen.species === species);
}

/** Whether two medicines are one active: of an id nobody knows, only the id itself tells. */
export function sameActive(formulary: Formulary, one: string, other: string): boolean {
  if (one === other) return true;
  const active = medicineById(formulary, one)?.active;
  return active !== undefined && active === medicineById(formulary, other)?.active;
}
