import type { RegisterLine } from '../../core/exports/register.ts';
import { type CorrectionWords, ENGLISH_CORRECTIONS } from '../../core/exports/register-line.ts';
import type { ScreenLanguage } from '../../shared/language.ts';

/** A count with its noun in the number a language asks for. */
function counted(
  locale: string,
  count: number,
  nouns: { readonly one: string; readonly other: string },
): string {
  const noun = new Intl.PluralRules(locale).select(count) === 'one' ? nouns.one : nouns.other;
  return `${count} ${noun}.`;
}

const EN = {
  title: 'Treatment register',
  back: 'Back',
  print: 'Print',
  printed: (when: string) => `Printed ${when}`,
  law: 'Keep it as long as local law asks',
  everything: 'Everything on this kiosk',
  period: (from: string | undefined, to: string | undefined) =>
    [from === undefined ? '' : `From ${from}`, to === undefined ? '' : `up to ${to}`]
      .filter(Boolean)
      .join(' '),
  of: (animal: string) => `of ${animal}`,
  none: 'No treatment in these days.',
  count: (count: number): string => counted('en', count, { one: 'treatment', other: 'treatments' }),
  provisional: 'the clock was not set',
  noTag: 'no tag',
  scale: 'scale',
  bottle: 'as sold',
  lot: (lot: string | null, month: string) =>
    `${lot === null ? 'lot not read' : `lot ${lot}`}, good until ${month}`,
  mixed: (powderGrams: number | null, waterMl: number | null, by: string, when: string) =>
    [
      'mixed',
      powderGrams === null ? '' : `${powderGrams} g powder`,
      waterMl === null ? '' : `${waterMl} g water`,
      `by ${by}`,
      when,
    ]
      .filter(Boolean)
      .join(', ')
      .replace('mixed, ', 'mixed '),
  animal: ({ species, class: kind, ageDays, bred, inMilk }: RegisterLine['animal']) =>
    [
      species,
      kind,
      ageDays === null ? '' : `${ageDays} days old`,
      bred ? 'bred' : '',
      inMilk ? 'in milk' : '',
    ]
      .filter(Boolean)
      .join(', '),
  use: { label: 'label', 'extra-label': 'extra-label' },
  /** Routes and outcomes as they are kept. */
  kept: (text: string): string => text,
  clear: { unknown: 'not known', 'not-for-people': 'never for people' },
  corrections: ENGLISH_CORRECTIONS as CorrectionWords,
  corrected: (what: string) => `Corrected: ${what}`,
  columns: {
    given: 'Given',
    animal: 'Animal',
    weight: 'Weight',
    medicine: 'Medicine',
    dose: 'Dose',
    use: 'Use, on word of',
    meat: 'Meat clear',
    milk: 'Milk clear',
    by: 'Given by',
  },
};

/** What stands on the printed register. */
export type RegisterWords = typeof EN;

const SPECIES_ES: Readonly<Record<RegisterLine['animal']['species'], string>> = {
  goat: 'cabra',
  sheep: 'oveja',
  cattle: 'vacuno',
};
const CLASS_ES: Readonly<Record<RegisterLine['animal']['class'], string>> = {
  female: 'hembra',
  male: 'macho',
  castrate: 'castrado',
  young: 'cría',
};
const KEPT_ES: Readonly<Record<string, string>> = {
  'oral drench': 'por la boca',
  'under the skin': 'bajo la piel',
  'into the muscle': 'en el músculo',
  'as the vet directs': 'como mostró el veterinario',
  part: 'una parte',
  'spat-out': 'escupida',
};

const ES: RegisterWords = {
  title: 'Registro de tratamientos',
  back: 'Atrás',
  print: 'Imprimir',
  printed: (when) => `Impreso ${when}`,
  law: 'Guárdelo tanto como pida la ley del lugar',
  everything: 'Todo lo de este quiosco',
  period: (from, to) =>
    [from === undefined ? '' : `Desde ${from}`, to === undefined ? '' : `hasta ${to}`]
      .filter(Boolean)
      .join(' '),
  of: (animal) => `de ${animal}`,
  none: 'Ningún tratamiento en estos días.',
  count: (count) => counted('es', count, { one: 'tratamiento', other: 'tratamientos' }),
  provisional: 'el reloj no estaba puesto',
  noTag: 'sin arete',
  scale: 'báscula',
  bottle: 'como se vende',
  lot: (lot, month) => `${lot === null ? 'lote no leído' : `lote ${lot}`}, sirve hasta ${month}`,
  mixed: (powderGrams, waterMl, by, when) =>
    [
      'mezclada',
      powderGrams === null ? '' : `${powderGrams} g de polvo`,
      waterMl === null ? '' : `${waterMl} g de agua`,
      `por ${by}`,
      when,
    ]
      .filter(Boolean)
      .join(', ')
      .replace('mezclada, ', 'mezclada '),
  animal: ({ species, class: kind, ageDays, bred, inMilk }) =>
    [
      SPECIES_ES[species],
      CLASS_ES[kind],
      ageDays === null ? '' : `de ${ageDays} días`,
      bred ? 'cubierta' : '',
      inMilk ? 'da leche' : '',
    ]
      .filter(Boolean)
      .join(', '),
  use: { label: 'etiqueta', 'extra-label': 'fuera de la etiqueta' },
  kept: (text) => KEPT_ES[text] ?? text,
  clear: { unknown: 'no se conoce', 'not-for-people': 'nunca para personas' },
  corrections: {
    notGiven: 'no se dio',
    wrongAnimal: (name) => `animal equivocado: ${name}`,
    wrongVolume: (volumeMl) => `volumen equivocado: ${volumeMl} mL`,
    veterinarian: (meat, milk) => `veterinario: carne ${meat}, leche ${milk}`,
    time: (count, unit) => `${count} ${unit === 'hours' ? 'horas' : 'días'}`,
    nothingSaid: 'no dijo nada',
    aVeterinarian: 'veterinario',
  },
  corrected: (what) => `Corregido: ${what}`,
  columns: {
    given: 'Se dio',
    animal: 'Animal',
    weight: 'Peso',
    medicine: 'Medicamento',
    dose: 'Dosis',
    use: 'Uso, según',
    meat: 'Carne libre',
    milk: 'Leche libre',
    by: 'Lo dio',
  },
};

/** The words of the printed register, by the language of the screen. */
export const REGISTER_WORDS: Readonly<Record<ScreenLanguage, RegisterWords>> = { en: EN, es: ES };
