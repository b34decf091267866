import type { OutOfGroupView } from '../../shared/group.ts';

/** English for dosing animals that cannot be weighed one by one. */
export const enGroup = {
  door: 'Group dose',
  choose: 'Whom, by their last weights?',
  all: 'All',
  whom: 'To treat',
  whomHint: 'by their scores',
  pen: (pen: string) => `Pen ${pen}`,
  title: (at: number, of: number, animals: number) =>
    `${of > 1 ? `Group ${at} of ${of}: ` : ''}${animals === 1 ? '1 animal' : `${animals} animals`}`,
  nobody: 'Nobody here can be dosed as a group.',
  heaviest: (name: string, weight: string, day: string) =>
    `Heaviest ${name}, ${weight} (${day}): sets the dose`,
  lightest: (name: string, weight: string, rate: string, low: string, high: string) =>
    `Lightest ${name}, ${weight}: gets ${rate} (${low} to ${high})`,
  never: (rate: string) => `never above ${rate}`,
  advice: 'By last weights: advice, not an offer. A weighed dose is surer.',
  who: 'Who',
  leave: 'leave out',
  leaveTitle: 'Tap whom to leave out',
  out: (count: number) => `Not in one: ${count}`,
  outTitle: 'In no group, and why',
  whyOut: {
    'left-out': 'left out here: tap to take in',
    'never-weighed': 'never weighed',
    'weight-too-old': 'weighed over 30 days ago',
    'no-dose': 'no syringe measures its dose: weigh it',
    stop: 'stopped',
  } satisfies Record<OutOfGroupView['why'], string>,
  start: 'Dose one by one',
  takeInHand: 'Take it in hand first',
  other: 'Other group',
  progress: (given: number, of: number) => `${given} of ${of} given`,
  skip: 'Not this one',
  given: 'GIVEN',
  undoLast: (name: string) => `Undo ${name}`,
  done: 'The group is done',
  back: 'Back',
};
