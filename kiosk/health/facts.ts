import type { MachinePage } from '../../shared/machine.ts';
import type { Fact } from '../parts/fact.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

const MEGABYTE = 1e6;
const GIGABYTE = 1e9;
/** Less room than this on the card, in bytes, is worth a remark. */
const LITTLE_ROOM = GIGABYTE;

/** What the board and the kiosk on it are like, a line each. */
export function healthFacts(machine: MachinePage, { health }: Words, show: Show): Fact[] {
  const { disk, celsius, limitCelsius } = machine;
  const whole = (bytes: number, unit: number): string => show.number(Math.round(bytes / unit));
  return [
    {
      what: health.supply,
      said: health.supplied[machine.supply],
      loud: machine.supply === 'low' || machine.supply === 'was-low',
    },
    {
      what: health.heat,
      said:
        celsius === null
          ? health.unmeasured
          : health.degrees(
              show.number(Math.round(celsius)),
              limitCelsius === null ? null : show.number(limitCelsius),
            ),
      loud: machine.hot,
    },
    ...(disk.free === null || disk.total === null
      ? []
      : [
          {
            what: health.card,
            said: health.room(show.number(Math.floor(disk.free / GIGABYTE)), whole(disk.total, GIGABYTE)),
            loud: disk.free < LITTLE_ROOM,
          },
        ]),
    {
      what: health.records,
      said:
        disk.records === null
          ? health.noRecords
          : health.megabytes(show.number(Math.ceil(disk.records / MEGABYTE))),
    },
    {
      what: health.running,
      said: health.since(show.duration(machine.kioskSeconds), show.duration(machine.boardSeconds)),
    },
    { what: health.release, said: health.version(machine.version, machine.node) },
  ];
}
