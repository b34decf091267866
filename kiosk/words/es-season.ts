import type { enSeason } from './en-season.ts';

/** Spanish words of the season: what the weather says of barber's pole worm, and the way in for weather. */
export const esSeason: typeof enSeason = {
  door: 'Temporada',
  doorHint: 'qué dice el clima',
  title: (suggestion) =>
    suggestion === null
      ? 'Faltan días para saberlo'
      : suggestion === 'high'
        ? 'El clima dice: ALTA'
        : 'El clima dice: BAJA',
  guide: 'Una guía, no un conteo: cada cuánto mirar, nunca a quién tratar.',
  curve: 'Larvas en el pasto, con igual estiércol cada día; abajo: lluvia',
  today: 'hoy',
  missing: (days) => `Falta lluvia pronosticada: ${days} de los 4 días que necesita.`,
  ends: (days) => (days === 1 ? 'Falta el día de ayer.' : `Faltan los últimos ${days} días.`),
  few: (measured, wanted) => `Conocidos: ${measured} de ${wanted} días.`,
  gap: (days, date) => `Un hueco de ${days} días antes del ${date}.`,
  old: (days) =>
    days === 1 ? '1 día viene de un pronóstico viejo.' : `${days} días vienen de pronósticos viejos.`,
  whole: 'Se conocen cuatro semanas, y cuatro días por delante.',
  set: { high: 'Temporada puesta: ALTA', low: 'Temporada puesta: BAJA' },
  turn: { high: 'Ponerla ALTA', low: 'Ponerla BAJA' },
  weather: 'Archivo de clima',
  why: 'En qué se apoya',
  whyTitle: 'En qué se apoya',
  warmth: (gathered, days, needed) =>
    `Calor: ${gathered} grados-día (°C) en ${days} días; de huevo a larva infectiva hacen falta ${needed}.`,
  moist: (days) =>
    `Humedad: ${days} días con más lluvia que evaporación, ese día y los cuatro siguientes juntos, y más de 10 °C.`,
  look: (days) => `Míreles los párpados cada ${days} días.`,
  begins: (date) => `La curva empieza con pasto limpio el ${date}.`,
  unknown: 'No sabe nada de su pasto, sombra, estiércol ni de cuántos huevos caen.',
  source: 'Larvas: GLOWORM-FL (Rose et al. 2015). Cada cuánto mirar: wormboss.com.au.',
  latitude: (degrees, south) => `Latitud ${degrees}° ${south ? 'sur' : 'norte'}`,
  noLatitude: '¿Dónde está la finca?',
  noLatitudeHint: 'De su latitud depende el largo de los días y lo rápido que seca el pasto.',
  setLatitude: 'Poner la latitud',
  which: '¿De qué lado del ecuador?',
  north: 'Norte',
  south: 'Sur',
  degrees: 'Grados de latitud, de 0 a 90',
  noWeather: 'Aún no se conoce el clima',
  noWeatherHint:
    'Necesita la temperatura media y la lluvia de cada día, cuatro semanas atrás, y cuatro días de lluvia pronosticada.',
  tooOld: (date) => `El clima termina el ${date}`,
  tooOldHint: 'Hace más de dos semanas: no dice nada de ahora. Lea un archivo más nuevo.',
  pick: '¿Qué archivo de clima?',
  noFile: 'Ningún archivo de clima aún',
  noFileHint:
    'Copie un archivo CSV a la carpeta “import” de los datos del quiosco. Columnas: date, temperature C (o min y max), rain mm.',
  days: (days, left) =>
    left === 0 ? `${days} días, todas las filas bien` : `${days} días, ${left} celdas mal`,
  span: (first, last) => `Del ${first} al ${last}. Aún no se ha escrito nada.`,
  holes: (days) => (days === 0 ? '' : days === 1 ? 'Falta 1 día.' : `Faltan ${days} días.`),
  accept: (days) => `Mantenga: incluir ${days} días`,
  taken: (days) => `${days} días incluidos`,
  refused: {
    'not-utf8': 'No es texto UTF-8. Guárdelo como “CSV UTF-8”.',
    'broken-quotes': 'Hay unas comillas sin cerrar.',
    'no-table': 'No es una tabla con comas, punto y coma o tabulaciones.',
    empty: 'No contiene nada.',
    'no-such-columns':
      'Su primera línea debe nombrar una fecha, una temperatura con C o F (o min y max) y la lluvia con mm o in.',
    unreadable: 'No se pudo leer. Pruebe otra vez con la memoria.',
  },
  fault: {
    'not-a-date': 'no es un día del calendario',
    'date-order-not-known': '¿día o mes primero?',
    'too-long-ago': 'hace demasiado',
    'beyond-forecast': 'más allá de un pronóstico',
    missing: 'falta',
    'not-a-number': 'no es un número',
    'beyond-weather': 'no hay tal clima en la tierra',
    'day-twice': 'este día está dos veces',
    'max-below-min': 'el máximo está bajo el mínimo',
  },
};
