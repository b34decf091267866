import type { enCare } from './en-care.ts';

/** Spanish for how a medicine is given and kept. */
export const esCare: typeof enCare = {
  technique: {
    drench: 'Cabeza a nivel, sobre la lengua, lento',
    'as-the-vet-showed': 'Como le mostró el veterinario: no por la boca',
  },
  keep: {
    'not-warm-or-frozen': 'No más de 25 °C, nunca congelado',
    dark: 'Protéjalo de la luz',
  },
  refrigerate: 'Al refrigerador entre rondas',
};
