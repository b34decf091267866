import type { Keeping, Technique } from '../../core/medicine/care.ts';

/** English for how a medicine is given and kept; of any other way the formulary's own line is shown. */
export const enCare = {
  technique: {
    drench: 'Head level, over the tongue, slowly',
    'as-the-vet-showed': 'As the vet showed you: not a drench',
  } satisfies Record<Exclude<Technique, 'other'>, string>,
  keep: {
    'not-warm-or-frozen': 'Not above 25 °C, never frozen',
    dark: 'Keep from light',
  } satisfies Record<Exclude<Keeping, 'other'>, string>,
  refrigerate: 'Refrigerator between rounds',
};
