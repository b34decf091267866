import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { senseBoard } from '../../../hardware/board/sensors.ts';

let sys = '';
beforeEach(() => {
  sys = mkdtempSync(join(tmpdir(), 'sys-'));
});
afterEach(() => rmSync(sys, { recursive: true }));

function write(files: Readonly<Record<string, string>>): void {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(sys, 'class', path)), { recursive: true });
    writeFileSync(join(sys, 'class', path), `${text}\n`);
  }
}

const NO_ALARM = {
  'hwmon/hwmon0/name': 'cpu_thermal',
  'hwmon/hwmon0/temp1_input': '48000',
  'hwmon/hwmon1/name': 'rpi_volt',
  'hwmon/hwmon1/in0_lcrit_alarm': '0',
};

test('a board that tells nothing is unknown, not good', () => {
  expect(senseBoard(sys)).toEqual({ supply: 'unknown', celsius: null, limitCelsius: null });
});

test('the alarm of any monitor is a low supply', () => {
  write(NO_ALARM);
  expect(senseBoard(sys).supply).toBe('good');
  write({ 'hwmon/hwmon1/in0_lcrit_alarm': '1' });
  expect(senseBoard(sys).supply).toBe('low');
});

test('the hottest zone counts, with the lowest of its points that slow it down', () => {
  write({
    'thermal/thermal_zone0/temp': '51540',
    'thermal/thermal_zone0/trip_point_0_type': 'critical',
    'thermal/thermal_zone0/trip_point_0_temp': '110000',
    'thermal/thermal_zone0/trip_point_1_type': 'passive',
    'thermal/thermal_zone0/trip_point_1_temp': '80000',
    'thermal/thermal_zone0/trip_point_2_type': 'active',
    'thermal/thermal_zone0/trip_point_2_temp': '45000',
    'thermal/thermal_zone1/temp': '39000',
    'thermal/cooling_device0/type': 'Processor',
  });
  expect(senseBoard(sys)).toEqual({ supply: 'unknown', celsius: 51.54, limitCelsius: 80 });
});

test('a zone that cannot be read, and a limit that is none, are left out', () => {
  write({
    'thermal/thermal_zone0/temp': '',
    'thermal/thermal_zone1/temp': '40000',
    'thermal/thermal_zone1/trip_point_0_type': 'passive',
    'thermal/thermal_zone1/trip_point_0_temp': '-274000',
  });
  expect(senseBoard(sys)).toEqual({ supply: 'unknown', celsius: 40, limitCelsius: null });
});
