import type { Syringe } from '../../../core/dosing/syringe.ts';
import { millilitres } from '../../../core/quantity/volume.ts';

/** A syringe of a capacity and a step between marks, both in millilitres. */
export function makeSyringe(capacityMl: number, graduationMl: number): Syringe {
  return {
    id: `s-${capacityMl}-${graduationMl}`,
    name: `${capacityMl} mL syringe`,
    capacity: millilitres(capacityMl),
    graduation: millilitres(graduationMl),
    measured: null,
  };
}
