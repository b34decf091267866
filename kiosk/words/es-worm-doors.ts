import type { enWormDoors } from './en-worm-doors.ts';

/** Spanish words of the doors of the worm check. */
export const esWormDoors: typeof enWormDoors = {
  doors: {
    whom: 'A quién tratar',
    scores: 'Evaluación',
    eggs: 'Conteo de huevos',
    tests: '¿Funcionó?',
  },
  notScored: (count) => (count === 0 ? 'todos evaluados esta semana' : `${count} por evaluar`),
  scoresTitle: '¿A quién miró?',
  countThem: 'cuente una muestra',
  noTest: 'pruebe un medicamento',
  testsOpen: (count) => (count === 1 ? '1 prueba en curso' : `${count} pruebas en curso`),
};
