import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What the board tells of its supply and its temperature. */
export interface BoardSenses {
  /** Whether the supply is too low for the board now; `unknown` where the board does not tell. */
  readonly supply: 'low' | 'good' | 'unknown';
  /** The hottest part that is measured, degrees Celsius; `null` where none is. */
  readonly celsius: number | null;
  /** From which temperature on that part slows the board down or stops it, degrees Celsius; `null` where it does not tell. */
  readonly limitCelsius: number | null;
}

/** A file's number; `null` where there is no such file, or no number in it. */
function number(...path: string[]): number | null {
  const text = word(...path);
  return text === null || text === '' || !Number.isFinite(Number(text)) ? null : Number(text);
}

function word(...path: string[]): string | null {
  try {
    return readFileSync(join(...path), 'utf8').trim();
  } catch {
    return null;
  }
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function senseSupply(monitors: string): BoardSenses['supply'] {
  const alarms = namesIn(monitors).flatMap((monitor) =>
    namesIn(join(monitors, monitor))
      .filter((name) => /^in\d+_lcrit_alarm$/.test(name))
      .flatMap((name) => number(monitors, monitor, name) ?? []),
  );
  if (alarms.length === 0) return 'unknown';
  return alarms.some((alarm) => alarm !== 0) ? 'low' : 'good';
}

function limitOf(zone: string): number | null {
  const limits = namesIn(zone).flatMap((name) => {
    const point = /^trip_point_(\d+)_type$/.exec(name)?.[1];
    const slows = point !== undefined && ['passive', 'hot', 'critical'].includes(word(zone, name) ?? '');
    return slows ? (number(zone, `trip_point_${point}_temp`) ?? []) : [];
  });
  // Zones without a limit are given one of 0 or below by some drivers.
  const real = limits.filter((limit) => limit > 0);
  return real.length === 0 ? null : Math.min(...real) / 1000;
}

/**
 * Reads what Linux tells of the board below `sys`, a few small files.
 *
 * Supply: `hwmon/…/in…_lcrit_alarm`, 1 while a voltage is critically low (kernel.org, *Kernel driver raspberrypi-hwmon*:
 * the undervoltage alarm). Temperature: `thermal/…/temp` and its trip points, thousandths of a degree (kernel.org, *Generic
 * Thermal Sysfs driver*).
 */
export function senseBoard(sys = '/sys'): BoardSenses {
  const zones = join(sys, 'class/thermal');
  let hottest: { readonly zone: string; readonly celsius: number } | null = null;
  for (const name of namesIn(zones)) {
    const milli = name.startsWith('thermal_zone') ? number(zones, name, 'temp') : null;
    if (milli !== null && (hottest === null || milli / 1000 > hottest.celsius)) {
      hottest = { zone: join(zones, name), celsius: milli / 1000 };
    }
  }
  return {
    supply: senseSupply(join(sys, 'class/hwmon')),
    celsius: hottest?.celsius ?? null,
    limitCelsius: hottest === null ? null : limitOf(hottest.zone),
  };
}
