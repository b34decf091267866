import type { enAnimals } from './en-animals.ts';

/** Spanish words of the animals that the round and Home show. */
export const esAnimals: typeof enAnimals = {
  door: 'Animales',
  here: (count) => `${count} en la finca`,
  nobody: 'Ningún animal aún',
  newTag: (tail) => `El arete …${tail} es nuevo aquí`,
  enrolIt: 'Registrarlo',
  lostTag: (tail, names) => `El arete …${tail} lo perdió ${names}`,
  itIs: (name) => `Es ${name}`,
  pickIt: 'Verlos',
  twice: 'número doble',
  twiceTitle: 'Dos tienen ese número: ¿cuál es?',
  score: 'Evaluar',
  year: 'Año',
  month: 'Mes',
  scoreIt: 'Evaluar antes',
  toTreat: (count) => (count === 0 ? 'ninguno por ahora' : `${count} por tratar`),
  tile: { treat: 'tratar', leave: 'dejar', 'look-again': 'revisar' },
};
