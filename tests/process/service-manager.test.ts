import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { has, startKiosk } from './kiosk-process.ts';

const missing = ['socat', 'systemd-notify'].find((command) => !has(command)) ?? null;
const name = 'systemd hears that it is ready, that it works, and that it ends';

let folder = '';
let listener: ChildProcess | null = null;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'manager-'));
});
afterAll(() => {
  listener?.kill();
  rmSync(folder, { recursive: true, force: true });
});

test.skipIf(missing !== null)(
  missing === null ? name : `${name} (left out: no ${missing} here)`,
  async () => {
    const socket = join(folder, 'notify');
    listener = spawn('socat', ['-u', `UNIX-RECV:${socket}`, 'STDOUT']);
    let heard = '';
    listener.stdout?.on('data', (text) => {
      heard += String(text);
    });
    const hears = (state: string) => expect.poll(() => heard, { timeout: 20_000 }).toContain(state);
    await expect.poll(() => existsSync(socket), { timeout: 20_000 }).toBe(true);
    const { child } = await startKiosk({
      BYRESIDE_DATA: join(folder, 'data'),
      NOTIFY_SOCKET: socket,
      WATCHDOG_USEC: '1500000',
    });
    await hears('READY=1');
    const fed = heard.split('WATCHDOG=1').length;
    await expect.poll(() => heard.split('WATCHDOG=1').length, { timeout: 20_000 }).toBeGreaterThan(fed + 1);
    expect(heard).not.toContain('STOPPING=1');
    child.kill('SIGTERM');
    await new Promise((resolve) => child.once('exit', resolve));
    await hears('STOPPING=1');
  },
  90_000,
);
