import type { enPhoto } from './en-photo.ts';

/** Spanish words of taking the photo of an animal. */
export const esPhoto: typeof enPhoto = {
  title: (name) => `${name}: su foto`,
  take: 'Tomarla',
  keep: 'Guardarla',
  again: 'Otra vez',
  none: 'Sin foto',
  failed: 'No se guardó: intente otra vez',
  camera: {
    opening: 'La cámara se está abriendo…',
    none: 'No hay cámara. Conecte una al quiosco y abra otra vez esta pantalla.',
    forbidden: 'El navegador no da la cámara a esta página. Use la pantalla del propio quiosco.',
    broken: 'La cámara no arranca. Desconéctela, conéctela otra vez y abra esta pantalla.',
  },
};
