import type { LeftOut } from './group-plan.ts';

/** What stands on the page of groups, in English. */
export const GROUP_WORDS = {
  title: (number: number) => `Groups, jug ${number}`,
  open: 'Groups',
  only: [
    'Only where animals cannot be weighed one by one. The heaviest of each group sets its dose.',
    'Weights are the last of the day book. Nothing is logged here: log each at the kiosk, at the jug’s Group dose.',
  ],
  group: (at: number, species: string) => `Group ${at}: ${species}`,
  gets: (value: string, low: string, high: string) => `The lightest gets ${value}, ${low} to ${high}`,
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
