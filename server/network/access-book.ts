import type { DeviceKind, DeviceRight } from '../../shared/network.ts';
import { hashOf, newSecret } from '../security/secrets.ts';
import type { Access, AccessFile, KeptDevice, KeptPin } from './access-file.ts';

/** How many devices may be paired at once. */
export const MOST_DEVICES = 24;
/** When a device was last heard of is kept this often at most: a card wears out by writing. */
const SEEN_EVERY_MS = 10 * 60_000;

/**
 * Who is let in, in memory and on disk alike. What changes it throws where the disk refuses, with nothing changed; where
 * the file could not be read nothing is let in and nothing may be changed.
 */
export class AccessBook {
  readonly #file: AccessFile;
  #access: Access | null;
  readonly #seenAtMs = new Map<string, number>();
  #wroteSeenAtMs = Number.NEGATIVE_INFINITY;

  constructor(file: AccessFile) {
    this.#file = file;
    this.#access = file.read();
  }

  /** Whether the file says who is let in. */
  get readable(): boolean {
    return this.#access !== null;
  }

  /** Whether the network was turned on at the screen. */
  get on(): boolean {
    return this.#access?.on ?? false;
  }

  get devices(): readonly KeptDevice[] {
    return this.#access?.devices ?? [];
  }

  get peopleWithPin(): string[] {
    return Object.keys(this.#access?.pins ?? {});
  }

  pinOf(person: string): KeptPin | null {
    const pins = this.#access?.pins ?? {};
    return Object.hasOwn(pins, person) ? (pins[person] ?? null) : null;
  }

  turn(on: boolean): void {
    this.#change((access) => ({ ...access, on }));
  }

  setPin(person: string, pin: KeptPin): void {
    this.#change((access) => ({ ...access, pins: { ...access.pins, [person]: pin } }));
  }

  forgetPin(person: string): void {
    this.#change((access) => {
      const { [person]: _, ...pins } = access.pins;
      return { ...access, pins };
    });
  }

  /** Adds a device and comes to its token, which is kept nowhere but on the device. */
  add(device: { id: string; kind: DeviceKind; right: DeviceRight; pairedAtMs: number }): string {
    const token = newSecret();
    this.#change(({ nextNumber, devices, ...access }) => ({
      ...access,
      nextNumber: nextNumber + 1,
      devices: [...devices, { ...device, number: nextNumber, tokenHash: hashOf(token), lastSeenAtMs: null }],
    }));
    return token;
  }

  remove(deviceId: string): void {
    this.#change((access) => ({
      ...access,
      devices: access.devices.filter(({ id }) => id !== deviceId),
    }));
  }

  /** The device that holds a token. */
  byToken(token: string): KeptDevice | undefined {
    const hash = hashOf(token);
    return this.devices.find(({ tokenHash }) => tokenHash === hash);
  }

  /** Notes that a device was heard of. */
  saw(deviceId: string, wallMs: number): void {
    this.#seenAtMs.set(deviceId, Math.round(wallMs));
  }

  /** When a device was last heard of. */
  lastSeenAtMs({ id, lastSeenAtMs }: KeptDevice): number | null {
    return this.#seenAtMs.get(id) ?? lastSeenAtMs;
  }

  /** Keeps now and then when devices were last heard of; a disk that refuses takes it later. */
  keepSeen(wallMs: number): void {
    const news = this.devices.some((device) => this.lastSeenAtMs(device) !== device.lastSeenAtMs);
    if (!news || Math.abs(wallMs - this.#wroteSeenAtMs) < SEEN_EVERY_MS) return;
    this.#wroteSeenAtMs = wallMs;
    try {
      this.#change((access) => access);
    } catch {
      // Told by the disk's own watch; nothing hangs on it.
    }
  }

  #change(change: (access: Access) => Access): void {
    if (this.#access === null) throw new Error('who is let in could not be read');
    const changed = change(this.#access);
    const devices = changed.devices.map((device) => ({ ...device, lastSeenAtMs: this.lastSeenAtMs(device) }));
    const next = { ...changed, devices };
    this.#file.write(next);
    this.#access = next;
  }
}
