import type { enMixing } from './en-mixing.ts';

/** Spanish: how a jug is known again by its weight. */
export const esMixing: typeof enMixing = {
  jug: (letter) => `Jarra ${letter}`,
  proof: {
    fits: (now, should) => `En la báscula: ${now}. Debe ser ${should}.`,
    'weighs-otherwise': (now, should) => `${now} en la báscula, se esperaba ${should}`,
    'weighs-as-another': (now, should) => `${now} en la báscula, se esperaba ${should}`,
    'fits-two': (now) => `${now}: otra jarra pesaría lo mismo`,
    'nothing-there': () => 'Póngala en la báscula: su peso lo prueba',
    'bench-moving': () => 'En la báscula: deje que repose…',
    'bench-not-ready': () => '',
    'scale-tared': () => 'La báscula de mesa tiene tara: póngala en bruto',
    'weight-unknown': () => '',
  },
  proofOther: (number) => `Esa pesa como la jarra ${number}`,
  proofNot: (number) => `Esa no es la jarra ${number}`,
  weighed: (number) => `Pesada: es la jarra ${number}`,
};
