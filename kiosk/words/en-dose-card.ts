import type { DoseCardView } from '../../shared/dose-card.ts';

/** English words of the card that says why a dose is what it is. */
export const enDoseCard = {
  why: 'Why?',
  title: (volume: string, name: string) => `Why ${volume} for ${name}?`,
  target: (rate: string) => `target ${rate}`,
  never: (rate: string) => `never above ${rate}`,
  floor: (rate: string) => `never below ${rate}`,
  noFloor: 'floor not known',
  delivers: (value: string, low: string, high: string) => `${value} mg/kg, ${low} to ${high}`,
  over: 'May pass the limit',
  under: 'May stay below the floor',
  leads: {
    weight: (percent: string) => `Most of the doubt: the weight, ${percent}`,
    strength: (percent: string) => `Most of the doubt: the jug, ${percent}`,
    syringe: (percent: string) => `Most of the doubt: the syringe, ${percent}`,
  } satisfies Record<DoseCardView['leads'], (percent: string) => string>,
  advice: {
    'double-dilution': (volume: string, low: string, high: string) =>
      `Mix double, draw double: ${volume} gives ${low} to ${high}`,
    'other-syringe': (_: string, low: string, high: string, syringe: string) =>
      `A ${syringe} would give ${low} to ${high}`,
    'fewer-draws': (_: string, __: string, ___: string, syringe: string) => `A ${syringe} needs fewer draws`,
    'surer-weight': (_: string, low: string, high: string) =>
      `A finer scale or a calmer stand: ${low} to ${high}`,
  } satisfies Record<
    DoseCardView['advice'][number]['change'],
    (volume: string, low: string, high: string, syringe: string) => string
  >,
  noAdvice: 'Nothing else would make it much surer',
  figure: {
    weight: 'Weight',
    rate: 'Rate',
    limits: 'Limits',
    strength: 'Strength',
    volume: 'Volume',
  },
  off: (amount: string) => `± ${amount}`,
  percent: (value: string) => `${value} %`,
  moves: (rate: string) => `It moves the dose by ± ${rate}`,
  known: (amount: string) => `Known to ± ${amount}, 95 times in 100.`,
  weighedAt: (time: string) => `Held on the platform in this visit at ${time}.`,
  weightFrom: 'From what the scale showed: its step, its own error at this load, and how the animal moved.',
  ceilingFrom: (rate: string, evidence: string) => `Never above ${rate}: ${evidence}.`,
  floorFrom: (rate: string, evidence: string) => `Never below ${rate}: ${evidence}.`,
  rateFrom: (evidence: string) => `This figure: ${evidence}.`,
  mixed: (number: number, time: string, by: string, volume: string) =>
    `Jug ${number}, mixed ${time} by ${by}: active over ${volume}, from what the scales saw.`,
  activeFrom: (source: string) => `The active: ${source}`,
  sum: (rate: string, weight: string, strength: string, exact: string) =>
    `${rate} × ${weight} ÷ ${strength} = ${exact}`,
  mark: (volume: string, step: string, syringe: string) =>
    `The mark drawn to is ${volume}, of a ${syringe} with ${step} steps.`,
  tolerance: {
    weighed: 'Its error was weighed on this farm.',
    standard: 'Its error is what ISO 7886-1 allows: read for 1 mL and 10 mL, from memory for other sizes.',
  } satisfies Record<DoseCardView['tolerance'], string>,
};
