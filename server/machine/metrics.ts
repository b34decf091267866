import { collectDefaultMetrics, Gauge, Registry } from 'prom-client';
import type { House } from '../house.ts';

/** How finely waits of the event loop are measured, in ms: each measurement wakes the board. */
const EVERY_MS = 100;

/** A figure as it is when somebody asks; `null` leaves it out. */
type Figure = () => number | null;

/**
 * The figures of one kiosk in the text format of Prometheus, each read when it is asked for.
 *
 * They tell how the kiosk is; of animals, people and doses they tell nothing.
 */
export function createMetrics(house: House): Registry {
  const registers = new Registry();
  const { standing, barn } = house;

  function gauge(name: string, help: string, figure: Figure): void {
    new Gauge({
      name: `byreside_${name}`,
      help,
      registers: [registers],
      collect() {
        const now = figure();
        // A figure that is not known is not zero.
        if (now === null) this.remove();
        else this.set(now);
      },
    });
  }

  collectDefaultMetrics({ register: registers, eventLoopMonitoringPrecision: EVERY_MS });
  new Gauge({
    name: 'byreside_link_ready',
    help: 'Whether a device is connected and carries values.',
    labelNames: ['role'],
    registers: [registers],
    collect() {
      for (const { role, link } of standing.devices()) this.set({ role }, link === 'ready' ? 1 : 0);
    },
  });
  const yes = (is: boolean) => (is ? 1 : 0);
  gauge('working', 'Whether the kiosk can do its work.', () => yes(standing.problem === null));
  gauge('logging', 'Whether the disk takes records.', () => yes(barn.context.disk.trouble() === null));
  gauge('clock_trusted', 'Whether the clock is believed.', () => yes(barn.context.clock.isTrusted()));
  gauge('board_celsius', 'Temperature of the hottest part of the board.', () => house.machine().celsius);
  gauge('supply_low', 'Whether the supply of the board is too low now.', () => {
    const { supply } = standing.machine();
    return supply === 'unknown' ? null : yes(supply === 'low');
  });
  gauge('disk_free_bytes', 'Room left where the records are.', () => house.machine().disk.free);
  gauge('records_bytes', 'Size of the records.', () => house.machine().disk.records);
  gauge('last_copy_timestamp_seconds', 'When the records were copied last.', () => {
    const { last } = standing.keeping().backup;
    return last === null ? null : Date.parse(last.at) / 1000;
  });
  return registers;
}
