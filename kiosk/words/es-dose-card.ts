import type { enDoseCard } from './en-dose-card.ts';

/** Spanish words of the card that says why a dose is what it is. */
export const esDoseCard: typeof enDoseCard = {
  why: '¿Por qué?',
  title: (volume, name) => `¿Por qué ${volume} para ${name}?`,
  target: (rate) => `meta ${rate}`,
  never: (rate) => `nunca más de ${rate}`,
  floor: (rate) => `nunca menos de ${rate}`,
  noFloor: 'mínimo desconocido',
  delivers: (value, low, high) => `${value} mg/kg, de ${low} a ${high}`,
  over: 'Puede pasar el límite',
  under: 'Puede quedar bajo el mínimo',
  leads: {
    weight: (percent) => `La mayor duda: el peso, ${percent}`,
    strength: (percent) => `La mayor duda: la jarra, ${percent}`,
    syringe: (percent) => `La mayor duda: la jeringa, ${percent}`,
  },
  advice: {
    'double-dilution': (volume, low, high) => `Mezcle doble, cargue doble: ${volume} da de ${low} a ${high}`,
    'other-syringe': (_, low, high, syringe) => `Una ${syringe} daría de ${low} a ${high}`,
    'fewer-draws': (_, __, ___, syringe) => `Una ${syringe} necesita menos cargas`,
    'surer-weight': (_, low, high) => `Báscula más fina o animal más quieto: de ${low} a ${high}`,
  },
  noAdvice: 'Nada más la haría mucho más segura',
  figure: {
    weight: 'Peso',
    rate: 'Tasa',
    limits: 'Límites',
    strength: 'Concentración',
    volume: 'Volumen',
  },
  off: (amount) => `± ${amount}`,
  percent: (value) => `${value} %`,
  moves: (rate) => `Mueve la dosis en ± ${rate}`,
  known: (amount) => `Conocido a ± ${amount}, 95 veces de 100.`,
  weighedAt: (time) => `Fijado en la plataforma en esta visita a las ${time}.`,
  weightFrom:
    'De lo que mostró la báscula: su paso, su propio error con esta carga y cuánto se movió el animal.',
  ceilingFrom: (rate, evidence) => `Nunca más de ${rate}: ${evidence}.`,
  floorFrom: (rate, evidence) => `Nunca menos de ${rate}: ${evidence}.`,
  rateFrom: (evidence) => `Esta cifra: ${evidence}.`,
  mixed: (number, time, by, volume) =>
    `Jarra ${number}, mezclada ${time} por ${by}: activo en ${volume}, según lo que vieron las básculas.`,
  activeFrom: (source) => `El activo: ${source}`,
  sum: (rate, weight, strength, exact) => `${rate} × ${weight} ÷ ${strength} = ${exact}`,
  mark: (volume, step, syringe) => `La raya a cargar es ${volume}, de una ${syringe} con rayas de ${step}.`,
  tolerance: {
    weighed: 'Su error se pesó en esta finca.',
    standard:
      'Su error es el que permite ISO 7886-1: leído para 1 mL y 10 mL, de memoria para otros tamaños.',
  },
};
