import { mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { realDevice } from '../../../server/devices/real-device.ts';

test('two names of one device lead to it, and a name with nothing plugged in stands for itself', () => {
  const folder = mkdtempSync(join(tmpdir(), 'real-device-'));
  const at = (name: string) => join(folder, name);
  writeFileSync(at('ttyUSB0'), '');
  symlinkSync('ttyUSB0', at('by-id'));
  symlinkSync('ttyUSB0', at('by-path'));
  expect(realDevice(at('by-id'))).toBe(realDevice(at('by-path')));
  expect(realDevice(at('by-id'))).toBe(realDevice(at('ttyUSB0')));
  expect(realDevice(at('none'))).toBe(at('none'));
});
