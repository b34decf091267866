import type { FarmView, OfficeView } from '../../shared/farm.ts';

type Office = OfficeView['state'];
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
  offices: {
    door: 'Offices',
    title: 'Offices that read this farm',
    none: 'No office asks to read this farm.',
    how: 'A veterinarian or an office asks at a page of the hub. It is then found here.',
    waiting: 'Asking the hub …',
    failed: 'The hub is not reached. It is asked again.',
    states: { asks: 'asks to read', reads: 'reads since', 'shut-out': 'shut out since' } satisfies Record<
      Office,
      string
    >,
    reads: 'It reads who may be milked and sold, all treatments, and what worked. It changes nothing.',
    keeps: 'What it took along it keeps.',
    letIn: 'Hold to let it read',
    shutOut: 'Hold to shut it out',
    refused: 'The hub did not do it. Try again.',
  },
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
