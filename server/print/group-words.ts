import type { CautionCode } from '../../core/dosing/cautions.ts';
import type { ScreenLanguage } from '../../shared/language.ts';
import { CAUTION_NAMES_ES } from './caution-names-es.ts';
import type { LeftOut } from './group-plan.ts';

const EN = {
  title: (number: number) => `Groups, jug ${number}`,
  open: 'Groups',
  only: [
    'Only where animals cannot be weighed one by one. The heaviest of each group sets its dose.',
    'Weights are the last of the day book. Nothing is logged here: log each at the kiosk, at the jug’s Group dose.',
  ],
  group: (at: number, species: string) => `Group ${at}: ${species}`,
  gets: (value: string, low: string, high: string) => `The lightest gets ${value}, ${low} to ${high}`,
  /** Each code is made of words. */
  caution: (code: CautionCode): string => code.replaceAll('-', ' '),
  askFirst: (what: string) => `ask first: ${what}`,
  leaveOut: 'leave out',
  takeIn: 'take in',
  out: (species: string) => `In no group: ${species}`,
  none: 'No approved rule and no animal that could be grouped: approve a rule at Shed, weigh the animals at Platform.',
  reason: {
    'left-out': 'left out here',
    'never-weighed': 'never weighed: weigh it',
    'weight-too-old': 'last weight is too old: weigh it',
    'no-dose': 'no dose fits it: weigh it, or get a finer syringe',
    stop: 'stop',
  } satisfies Record<LeftOut['why'], string>,
  split: 'Groups are split so that nobody passes the limit. Do not put them together again.',
};

/** What stands on the page of groups. */
export type GroupWords = typeof EN;

const ES: GroupWords = {
  title: (number) => `Grupos, jarra ${number}`,
  open: 'Grupos',
  only: [
    'Solo donde no se puede pesar a los animales uno por uno. El más pesado de cada grupo fija su dosis.',
    'Los pesos son los últimos del diario. Aquí no se anota nada: anote cada animal en el quiosco, en Dosis por grupo de la jarra.',
  ],
  group: (at, species) => `Grupo ${at}: ${species}`,
  gets: (value, low, high) => `El más liviano recibe ${value}, de ${low} a ${high}`,
  caution: (code) => CAUTION_NAMES_ES[code],
  askFirst: (what) => `pregunte antes: ${what}`,
  leaveOut: 'dejar fuera',
  takeIn: 'incluir',
  out: (species) => `En ningún grupo: ${species}`,
  none: 'No hay regla aprobada ni animal que se pueda agrupar: apruebe una regla en Cobertizo, pese a los animales en Plataforma.',
  reason: {
    'left-out': 'se dejó fuera aquí',
    'never-weighed': 'nunca se pesó: péselo',
    'weight-too-old': 'su último peso es muy viejo: péselo',
    'no-dose': 'ninguna dosis le queda: péselo, o consiga una jeringa más fina',
    stop: 'alto',
  },
  split: 'Los grupos se separan para que nadie pase del límite. No los junte otra vez.',
};

/** The words of the page of groups, by the language of the screen. */
export const GROUP_WORDS: Readonly<Record<ScreenLanguage, GroupWords>> = { en: EN, es: ES };
