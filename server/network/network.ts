import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Refusal } from '../../shared/intent.ts';
import type { DeviceKind, LetIn, NetworkView, PairingCode, VisitorView } from '../../shared/network.ts';
import type { Clock } from '../barn/clock.ts';
import { qrPath } from '../print/qr-code.ts';
import { BOARD, STRANGER, type Visitor } from '../security/visitor.ts';
import { AccessBook, MOST_DEVICES } from './access-book.ts';
import type { AccessFile } from './access-file.ts';
import { isBoard, isSecret, senderOf, tokenIn } from './arrival.ts';
import { BackOff } from './back-off.ts';
import { Listening, type NetworkConfig } from './listening.ts';
import { Pairing } from './pairing.ts';
import { isPin, keptPin } from './pin.ts';
import { Shifts } from './shifts.ts';

type Device = Extract<Visitor, { kind: 'device' }>;

/** A page that shows the kiosk on a paired device. */
export interface DevicePage {
  /** Lets the page go, at once. */
  close(): void;
  /** Tells it who is at work there. */
  tell(visitor: VisitorView): void;
}

/** What the network is made of. */
export interface NetworkOptions {
  /** Where the board's certificate is kept. */
  readonly folder: string;
  readonly file: AccessFile;
  readonly config: NetworkConfig;
  /** Who works on this farm now. */
  readonly people: () => readonly string[];
  readonly clock: Pick<Clock, 'now'>;
  readonly newId: () => string;
  /** Hears that what is shown of it changed. */
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
}

const SECOND_MS = 1000;

/** Who is let in besides the board's own screen: the second door, pairing, paired devices, and the people at work on them. */
export class Network {
  readonly #options: NetworkOptions;
  readonly #book: AccessBook;
  readonly #listening: Listening;
  readonly #pairing = new Pairing();
  readonly #shifts = new Shifts();
  readonly #backOff = new BackOff();
  readonly #pages = new Map<string, Set<DevicePage>>();
  #app: FastifyInstance | null = null;
  #toldPairing = '';

  constructor(options: NetworkOptions) {
    this.#options = options;
    this.#book = new AccessBook(options.file);
    this.#listening = new Listening(options);
  }

  /** Stands behind the web server's second door from here on, and opens it if it is to be open. */
  serve(app: FastifyInstance): Promise<void> {
    this.#app = app;
    return this.#turn();
  }

  /** Closes the second door for good. */
  async stop(): Promise<void> {
    this.#app = null;
    await this.#turn();
  }

  view(): NetworkView {
    const { uptimeMs, wallMs } = this.#options.clock.now();
    const open = this.#pairing.at(uptimeMs);
    const at = (ms: number) => new Date(ms).toISOString();
    const trouble = this.#book.readable ? this.#listening.trouble : 'file-unreadable';
    const { isOpen, address, fingerprint } = this.#listening;
    return {
      listening: trouble !== null ? 'trouble' : isOpen ? 'on' : this.#wanted ? 'opening' : 'off',
      trouble,
      setByFile: this.#options.config.on,
      address,
      fingerprint,
      pairing:
        open === null ? null : { right: open.right, endsAt: at(Math.round(wallMs + open.endsAt - uptimeMs)) },
      paired: this.#pairing.endedAt(uptimeMs),
      devices: this.#book.devices.map((device) => {
        const seen = this.#book.lastSeenAtMs(device);
        return {
          id: device.id,
          kind: device.kind,
          number: device.number,
          right: device.right,
          pairedAt: at(device.pairedAtMs),
          lastSeenAt: seen === null ? null : at(seen),
          open: this.#pages.has(device.id),
          person: this.#personOn(device.id, uptimeMs),
        };
      }),
      withPin: this.#book.peopleWithPin.filter((name) => this.#options.people().includes(name)),
    };
  }

  /** Where another device finds this kiosk; `null` while it cannot. */
  get address(): string | null {
    return this.#listening.address;
  }

  /** Who sent a request. Only a door of its own, and a way nobody can read along, brings a device's token. */
  visitorOf(request: Pick<FastifyRequest, 'ip' | 'headers' | 'raw'>): Visitor {
    const way = this.#listening.wayOf(request.raw.socket);
    if (isBoard(way, request)) return BOARD;
    const token = isSecret(way, request) ? tokenIn(request) : null;
    const device = token === null ? undefined : this.#book.byToken(token);
    if (device === undefined) return STRANGER;
    const { uptimeMs, wallMs } = this.#options.clock.now();
    this.#book.saw(device.id, wallMs);
    return {
      kind: 'device',
      id: device.id,
      right: device.right,
      person: this.#personOn(device.id, uptimeMs),
    };
  }

  /** The address a request came from, and the name its host may have; `null` is one of the board's own. */
  originOf(request: Pick<FastifyRequest, 'ip' | 'headers' | 'raw'>) {
    const way = this.#listening.wayOf(request.raw.socket);
    return {
      way,
      sender: senderOf(way, request),
      secret: isSecret(way, request),
      proxyName: way === 'proxy' ? (this.#options.config.proxy?.name ?? null) : null,
    };
  }

  /** Turns it on or off; what the configuration turned on stays on. */
  turn(on: boolean): Refusal | null {
    if (this.#options.config.on) return 'network-set-by-file';
    return this.#written(() => {
      this.#book.turn(on);
      void this.#turn();
    });
  }

  /** Opens a pairing for a device that may do so much. */
  pair(right: Device['right']): Refusal | null {
    if (!this.#book.readable) return 'access-unreadable';
    if (!this.#listening.isOpen) return 'network-off';
    if (this.#book.devices.length >= MOST_DEVICES) return 'too-many-devices';
    this.#pairing.open(right, this.#options.clock.now().uptimeMs);
    return null;
  }

  stopPairing(): null {
    this.#pairing.stop();
    return null;
  }

  /** Lets a device in no more: its token is worth nothing and its pages are let go before this returns. */
  revoke(deviceId: string): Refusal | null {
    if (!this.#book.devices.some(({ id }) => id === deviceId)) return 'no-such-device';
    return this.#written(() => {
      this.#book.remove(deviceId);
      this.#shifts.end(deviceId);
      for (const page of this.#pages.get(deviceId) ?? []) page.close();
    });
  }

  forgetPin(person: string): Refusal | null {
    if (this.#book.pinOf(person) === null) return 'no-such-person';
    return this.#written(() => {
      this.#book.forgetPin(person);
      this.#tellAll(this.#shifts.endOf(person));
    });
  }

  /** The code of the pairing that is open, for the board alone. */
  pairingCode(): PairingCode | null {
    const open = this.#pairing.at(this.#options.clock.now().uptimeMs);
    const { address } = this.#listening;
    if (open === null || address === null) return null;
    // Behind a "#" it is sent to no server and stands in no log.
    return { code: open.code, address, qr: qrPath(`${address}/#pair/${open.code}`) };
  }

  /** Lets a device in by a code; comes to its token, once. Throws where the disk refuses. */
  letIn(code: string, kind: DeviceKind): { readonly token: string } | Extract<LetIn, { ok: false }> {
    const { uptimeMs, wallMs } = this.#options.clock.now();
    const right = this.#pairing.use(code, uptimeMs);
    this.#options.changed();
    if (right === 'wrong' || right === 'no-pairing') return { ok: false, why: right, waitSeconds: 0 };
    const id = this.#options.newId();
    return { token: this.#book.add({ id, kind, right, pairedAtMs: Math.round(wallMs) }) };
  }

  /** Keeps a PIN of a person, tapped at the board. Throws where the disk refuses. */
  async setPin(person: string, pin: string): Promise<LetIn> {
    if (!this.#options.people().includes(person)) return { ok: false, why: 'no-such-person', waitSeconds: 0 };
    const kept = await keptPin(pin);
    this.#book.setPin(person, kept);
    this.#tellAll(this.#shifts.endOf(person));
    this.#options.changed();
    return { ok: true };
  }

  /** Puts a person to work on a device by their PIN. Wrong ones make device and person wait. */
  async signIn({ id }: Device, person: string, pin: string): Promise<LetIn> {
    const kept = this.#options.people().includes(person) ? this.#book.pinOf(person) : null;
    if (kept === null) return { ok: false, why: 'no-such-person', waitSeconds: 0 };
    const { uptimeMs } = this.#options.clock.now();
    const names = [`device ${id}`, `person ${person}`];
    const waitMs = this.#backOff.waitMs(names, uptimeMs);
    if (waitMs > 0) return { ok: false, why: 'wait', waitSeconds: Math.ceil(waitMs / SECOND_MS) };
    this.#backOff.tried(names, uptimeMs);
    if (!(await isPin(pin, kept))) {
      const next = this.#backOff.waitMs(names, this.#options.clock.now().uptimeMs);
      return { ok: false, why: 'wrong', waitSeconds: Math.ceil(next / SECOND_MS) };
    }
    this.#backOff.right(names);
    // Turned out, or given another PIN, while it was being worked out.
    if (!this.#book.devices.some((device) => device.id === id) || this.#book.pinOf(person) !== kept)
      return { ok: false, why: 'wrong', waitSeconds: 0 };
    this.#shifts.begin(id, person, this.#options.clock.now().uptimeMs);
    this.#tell(id);
    return { ok: true };
  }

  /** Ends the work on a device. */
  signOut({ id }: Device): void {
    this.#shifts.end(id);
    this.#tell(id);
  }

  /** Notes that something was done on a device. */
  worked({ id }: Device): void {
    this.#shifts.worked(id, this.#options.clock.now().uptimeMs);
  }

  /** Notes a page of a device; the function returned notes that it is gone. */
  opened({ id }: Device, page: DevicePage): () => void {
    const pages = this.#pages.get(id) ?? new Set();
    this.#pages.set(id, pages.add(page));
    this.#options.changed();
    return () => {
      pages.delete(page);
      if (pages.size === 0) this.#pages.delete(id);
      this.#options.changed();
    };
  }

  /** Lets time pass: pairings and idle work run out, the certificate is renewed. */
  tick(): void {
    const { uptimeMs, wallMs } = this.#options.clock.now();
    const pairing = `${this.#pairing.at(uptimeMs)?.endsAt} ${this.#pairing.endedAt(uptimeMs)}`;
    if (pairing !== this.#toldPairing) this.#options.changed();
    this.#toldPairing = pairing;
    this.#tellAll(this.#shifts.endIdle(uptimeMs));
    this.#book.keepSeen(wallMs);
    this.#listening.tick();
  }

  /** Who is at work on a device, if that person works on the farm still. */
  #personOn(deviceId: string, uptimeMs: number): string | null {
    const person = this.#shifts.personOn(deviceId, uptimeMs);
    return person !== null && this.#options.people().includes(person) ? person : null;
  }

  #tell(deviceId: string): void {
    const device = this.#book.devices.find(({ id }) => id === deviceId);
    if (device !== undefined) {
      const person = this.#personOn(deviceId, this.#options.clock.now().uptimeMs);
      const visitor: VisitorView = { kind: 'device', right: device.right, person };
      for (const page of this.#pages.get(deviceId) ?? []) page.tell(visitor);
    }
    this.#options.changed();
  }

  #tellAll(deviceIds: readonly string[]): void {
    for (const deviceId of deviceIds) this.#tell(deviceId);
  }

  get #wanted(): boolean {
    return this.#app !== null && this.#book.readable && (this.#options.config.on || this.#book.on);
  }

  /** Changes what is kept, and tells of it; `null` where it was, a refusal where the file does not take it. */
  #written(change: () => void): Refusal | null {
    if (!this.#book.readable) return 'access-unreadable';
    change();
    this.#options.changed();
    return null;
  }

  /** Opens or closes the door as it is wanted. */
  async #turn(): Promise<void> {
    if (this.#wanted) return this.#listening.turn(this.#app);
    this.#pairing.stop();
    for (const pages of this.#pages.values()) for (const page of pages) page.close();
    return this.#listening.turn(null);
  }
}
