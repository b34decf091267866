import type { Saying, What } from './saying.ts';

/** A catalogue: how one language says every saying there is. None can be added without its words. */
export type SayWords = { readonly [W in What]: (saying: Extract<Saying, { readonly what: W }>) => string };

/** The dose a voice is tried with: its number sounds like another one. */
export const TRY_OUT = { what: 'dose', total: '15.5 mL', marks: ['15.5 mL'], syringe: '20 mL' } as const;

/** A dose and how to draw it; digits read after the dose end its sentence, so that they run into no other number. */
export function doseFirst(dose: string, how: readonly string[]): string {
  return `${dose}${dose.includes(',') ? '.' : ','} ${how.join(', ')}`;
}
