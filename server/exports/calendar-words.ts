import { esShipped } from '../../shared/es-shipped.ts';
import type { ScreenLanguage } from '../../shared/language.ts';

const EN = {
  /** A name that ships; what the farm wrote itself stays as it was written. */
  shipped: (name: string): string => name,
  clear: {
    milk: (animal: string) => `${animal}: milk may be used again`,
    meat: (animal: string) => `${animal}: meat may be used again`,
  },
  clearBy: (treatmentId: string) => `By the day book, treatment ${treatmentId}. Label and vet come first.`,
  useBy: (jug: number) => `Jug ${jug}: use by`,
  check: {
    platform: 'Check the platform scale with a known weight',
    bench: 'Check the bench scale with a known weight',
  },
  again: (medicine: string) => `${medicine}: look whether a second dose is needed`,
  samples: (medicine: string) => `${medicine}: take the second dung samples`,
  samplesOf: (animals: string, fromDay: number, untilDay: number) =>
    `${animals}. Day ${fromDay} to ${untilDay} after the dose.`,
};

/** What a calendar reminds of, in words. */
export type CalendarWords = typeof EN;

const ES: CalendarWords = {
  shipped: esShipped,
  clear: {
    milk: (animal) => `${animal}: su leche se puede usar otra vez`,
    meat: (animal) => `${animal}: su carne se puede usar otra vez`,
  },
  clearBy: (treatmentId) =>
    `Según el diario, tratamiento ${treatmentId}. La etiqueta y el veterinario mandan.`,
  useBy: (jug) => `Jarra ${jug}: sirve hasta`,
  check: {
    platform: 'Revise la báscula de la plataforma con un peso conocido',
    bench: 'Revise la báscula de la mesa con un peso conocido',
  },
  again: (medicine) => `${medicine}: mire si hace falta una segunda dosis`,
  samples: (medicine) => `${medicine}: tome las segundas muestras de estiércol`,
  samplesOf: (animals, fromDay, untilDay) =>
    `${animals}. Del día ${fromDay} al ${untilDay} después de la dosis.`,
};

/** The words of the calendar, by the language of the screen. */
export const CALENDAR_WORDS: Readonly<Record<ScreenLanguage, CalendarWords>> = { en: EN, es: ES };
