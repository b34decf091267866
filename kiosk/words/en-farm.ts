import type { FarmView } from '../../shared/farm.ts';

type Trouble = NonNullable<Extract<FarmView['sharing'], { kind: 'hub' }>['trouble']>;

/** English words of the other kiosks of the farm. */
export const enFarm = {
  door: 'Other kiosks',
  title: 'Other kiosks of the farm',
  demo: 'The demo shares nothing: what is tried here is nobody else’s.',
  none: 'This kiosk works alone.',
  how: 'To share the herd, plug in the stick with the invitation the hub wrote for this kiosk.',
  found: (name: string) => `Invitation for “${name}”`,
  at: (hub: string) => `by the hub at ${hub}`,
  join: 'Hold to share the herd',
  unreadable: 'The invitation cannot be read. Have the hub write a new one.',
  leave: 'Hold to share no more',
  name: 'This kiosk',
  others: 'Others',
  noOthers: 'none yet',
  last: 'Last exchange',
  never: 'not yet since the start',
  toPush: 'Still to send',
  unknown: 'not known yet',
  records: (count: number) => (count === 0 ? 'nothing' : count === 1 ? '1 record' : `${count} records`),
  waiting: (count: number) =>
    `${count === 1 ? '1 record' : `${count} records`} of others cannot be read yet. Update this kiosk’s program.`,
  trouble: {
    unreachable: 'The hub is not reached. This kiosk works on; all is sent when the line is back.',
    'shut-out': 'The hub shut this kiosk out. A new invitation lets it in again.',
    failing: 'The hub does not take what it is sent. Its log says why.',
  } satisfies Record<Trouble, string>,
  apart: {
    title: (name: string) => `${name} was dosed twice`,
    why: (active: string) => `${active}. Neither kiosk knew of the other.`,
    here: 'here',
    elsewhere: 'at another kiosk',
    at: (kiosk: string) => `at ${kiosk}`,
    told: (volume: string, where: string, when: string, by: string) => `${volume} ${where}, ${when}, ${by}`,
    what: 'Watch the animal, and ask your veterinarian. Was one not given: see Day book.',
    read: 'Hold: I have read this',
  },
};
