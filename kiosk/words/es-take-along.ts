import type { enTakeAlong } from './en-take-along.ts';

/** Spanish words of taking the records along. */
export const esTakeAlong: typeof enTakeAlong = {
  door: 'Llevárselo',
  which: '¿Qué quiere llevarse?',
  ofWhich: (name) => `${name}: ¿de qué días?`,
  files: {
    register: { name: 'Registro', what: 'cada tratamiento, para imprimir o como tabla' },
    weights: { name: 'Pesos', what: 'como tabla' },
    scores: { name: 'Evaluación', what: 'como tabla' },
    'treatment-events': { name: 'Tratamientos', what: 'para otro programa de finca' },
    'weight-events': { name: 'Pesos', what: 'para otro programa de finca' },
    'score-events': { name: 'Condición', what: 'para otro programa de finca' },
    calendar: { name: 'Calendario', what: 'plazos, vencimientos, pruebas' },
  },
  periods: {
    month: 'Este mes',
    'last-month': 'Mes pasado',
    quarter: 'Últimos 3 meses',
    year: 'Este año',
    'last-year': 'Año pasado',
    all: 'Todo',
  },
  print: 'Imprimirlo',
  download: 'Descargar',
  write: 'Escribir en la memoria',
  writing: 'Escribiendo…',
  written: 'Escrito. Ya puede sacar la memoria.',
  notWritten: {
    'no-folder': 'Aquí no hay carpeta para archivos.',
    'not-there': 'La memoria no está. Conéctela, espere un momento e intente otra vez.',
    full: 'La memoria está llena. No se escribió nada.',
    'not-written': 'No se pudo escribir. Intente otra vez, o use otra memoria.',
  },
  scan: 'Escanéelo con un teléfono en la red de la finca.',
  toStick: 'Se escribirá aquí:',
  noWay:
    'Este quiosco no comparte nada: no hay memoria instalada y ningún otro aparato puede pedirle. La guía de instalación dice cómo cambiarlo.',
};
