import type { RegisterLine } from '../../core/exports/register.ts';

/** What stands on the printed register, in English. */
export const REGISTER_WORDS = {
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
  count: (count: number) => `${count} ${count === 1 ? 'treatment' : 'treatments'}.`,
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
  clear: { unknown: 'not known', 'not-for-people': 'never for people' },
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
} as const;
