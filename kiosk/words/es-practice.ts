import type { enPractice } from './en-practice.ts';

/** Spanish for the practice round. */
export const esPractice: typeof enPractice = {
  door: 'Ronda de práctica',
  offer: 'Dura un minuto, con básculas simuladas. Nada se guarda. Después está en Cobertizo, Personas.',
  begin: 'Practicar',
  sign: 'PRÁCTICA',
  kept: 'Nada se guarda',
  end: 'Mantenga: fin',
  onlyRound: 'Aquí solo se practica la ronda: esa puerta no se abre.',
  say: {
    take: 'Toque el frasco que tendría en la mano.',
    prove: 'Compare número y fecha, y diga que es ese.',
    wait: 'Sube una cabra: mire cómo se fija el peso.',
    who: 'Toque el animal que está ahí.',
    caution: 'Léalo. Mantenga para aceptarlo, o sáltese el animal.',
    give: 'Llene hasta la marca, dela y mantenga Dada.',
    logged: 'Anotada. Deshacer queda un minuto. Toque Siguiente.',
    done: 'Eso es una ronda. Mantenga Fin, o siga.',
  },
};
