import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { scaleProfile } from '../../../hardware/scale/profiles.ts';
import { scaleDriver } from '../../../hardware/scale/scale-driver.ts';
import type { OpenPort } from '../../../hardware/serial/connection.ts';
import { createLink, type Link } from '../../../hardware/serial/link.ts';
import type { LinkDriver } from '../../../hardware/serial/link-driver.ts';
import { openSerialPort } from '../../../hardware/serial/serialport-connection.ts';
import { systemTimers } from '../../../hardware/serial/timers.ts';
import { createSimulatedBarn, type SimulatedBarn } from '../../../hardware/simulator/barn.ts';
import { wandDriver } from '../../../hardware/wand/wand-driver.ts';
import { socatPresent } from '../socat-present.ts';

const ROLES = ['platform', 'bench', 'wand'] as const;
type Role = (typeof ROLES)[number];

/** A device to test: simulated on a pseudo-terminal, or a real one named as `path,profile,baud`. */
interface Subject {
  readonly role: Role;
  readonly medium: 'simulated' | 'real';
  readonly skip: boolean;
  readonly name: string;
}

function settingOf(role: Role): string | undefined {
  return process.env[`TEST_PORT_${role.toUpperCase()}`];
}

const SUBJECTS: readonly Subject[] = ROLES.flatMap((role) => [
  {
    role,
    medium: 'simulated',
    skip: !socatPresent,
    name: socatPresent ? `simulated ${role}` : `simulated ${role} (left out: socat is not installed)`,
  },
  {
    role,
    medium: 'real',
    skip: settingOf(role) === undefined,
    name:
      settingOf(role) === undefined
        ? `real ${role} (left out: TEST_PORT_${role.toUpperCase()} is not set)`
        : `real ${role}`,
  },
]);

const timers = systemTimers();
const WITHIN = { timeout: 10_000, interval: 10 };
let folder = '';
let barn: SimulatedBarn | null = null;
const links: Link[] = [];

beforeAll(async () => {
  if (!socatPresent) return;
  folder = await mkdtemp(join(tmpdir(), 'byreside-devices-'));
  barn = await createSimulatedBarn({ timers, seed: 1, folder });
});
afterEach(async () => {
  await Promise.all(links.splice(0).map((link) => link.stop()));
});
afterAll(async () => {
  await barn?.stop();
  if (folder !== '') await rm(folder, { recursive: true, force: true });
});

interface Place {
  readonly path: string;
  readonly profile: string;
  readonly baud: number;
  readonly openPort: OpenPort;
}

function placeOf({ role, medium }: Subject): Place {
  if (medium === 'real') {
    const [path = '', profile = '', baud = '9600'] = settingOf(role)?.split(',') ?? [];
    return { path, profile, baud: Number(baud), openPort: openSerialPort };
  }
  if (barn === null) throw new Error('no simulated barn');
  return { path: barn.paths[role], profile: barn.profiles[role], baud: 9600, openPort: barn.openPort };
}

function driverOf(role: Role, profileId: string): LinkDriver<unknown> {
  if (role === 'wand') return wandDriver(timers.now);
  const profile = scaleProfile(profileId);
  if (profile === undefined) throw new Error(`no such format: ${profileId}`);
  return scaleDriver(profile, role, timers.now);
}

function open(subject: Subject) {
  const place = placeOf(subject);
  const items: unknown[] = [];
  const driver = driverOf(subject.role, place.profile);
  const link = createLink({
    ...place,
    driver,
    timers,
    random: () => 0.5,
    onState: () => {},
    onItem: (item) => items.push(item),
  });
  links.push(link);
  return { link, items };
}

// A suite at a device is one that needs nobody at the far end: what it says is not known beforehand.
describe.for(SUBJECTS)('a link to a $name', { timeout: 60_000 }, (subject) => {
  it.skipIf(subject.skip)('is ready after it has settled, and stays so', async () => {
    const { link, items } = open(subject);
    await expect.poll(() => link.state.status, WITHIN).toBe('ready');
    await new Promise((resolve) => setTimeout(resolve, 2500));
    expect(link.state.status).toBe('ready');
    expect(link.counters).toMatchObject({ opens: 1, losses: 0 });
    if (subject.role !== 'wand') {
      expect(items.length).toBeGreaterThan(3);
      for (const item of items) expect(item).toMatchObject({ role: subject.role });
    }
  });

  it.skipIf(subject.skip)('frees its port when stopped, and can be opened again five times', async () => {
    for (let time = 0; time < 5; time += 1) {
      const { link } = open(subject);
      await expect.poll(() => link.state.status, WITHIN).toBe('ready');
      await link.stop();
    }
  });

  it.skipIf(subject.skip)('keeps a second link out, which says why', async () => {
    const first = open(subject);
    await expect.poll(() => first.link.state.status, WITHIN).toBe('ready');
    const second = open(subject);
    await expect.poll(() => second.link.state.status, WITHIN).toBe('lost');
    expect(second.link.state).toMatchObject({ reason: 'in-use' });
    expect(first.link.state.status).toBe('ready');
  });
});
