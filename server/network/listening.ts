import type { FastifyInstance } from 'fastify';
import type { NetworkView } from '../../shared/network.ts';
import type { Clock } from '../barn/clock.ts';
import { type OwnCertificate, ownCertificate } from './certificate.ts';
import { Door, type Entrance } from './door.ts';
import { networkNames, networkNumbers } from './own-names.ts';

/** How other devices come in, by the configuration. */
export interface NetworkConfig {
  /** Turned on whatever the screen says. */
  readonly on: boolean;
  readonly port: number;
  /** The door of a proxy on the board, and the name others know that proxy by. */
  readonly proxy: { readonly port: number; readonly name: string } | null;
}

/** What the door for other devices is made of. */
export interface ListeningOptions {
  /** Where the board's certificate is kept. */
  readonly folder: string;
  readonly config: NetworkConfig;
  readonly clock: Pick<Clock, 'now'>;
  /** Hears that it was opened, closed, or could not be. */
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
}

/** How often the certificate is looked at. */
const LOOK_MS = 24 * 3600 * 1000;

/** Opens and closes the door for other devices as it is wanted, keeps its certificate fresh, and knows its address. */
export class Listening {
  readonly #options: ListeningOptions;
  readonly #door = new Door();
  #open: { readonly port: number; readonly certificate: OwnCertificate | null } | null = null;
  #trouble: NetworkView['trouble'] = null;
  /** Openings and closings, one after the other. */
  #turning: Promise<void> = Promise.resolve();
  #lookedAt = 0;

  constructor(options: ListeningOptions) {
    this.#options = options;
  }

  /** How a connection came in. */
  wayOf(socket: object) {
    return this.#door.wayOf(socket);
  }

  /** Whether other devices can come in. */
  get isOpen(): boolean {
    return this.#open !== null;
  }

  /** Why it could not be opened. */
  get trouble(): NetworkView['trouble'] {
    return this.#trouble;
  }

  /** SHA-256 of the board's certificate; `null` while closed and behind a proxy. */
  get fingerprint(): string | null {
    return this.#open?.certificate?.fingerprint ?? null;
  }

  /** Where another device finds this kiosk; `null` while it cannot. */
  get address(): string | null {
    const { proxy } = this.#options.config;
    if (this.#open === null) return null;
    if (proxy !== null) return `https://${proxy.name}`;
    return `https://${networkNumbers()[0] ?? networkNames().at(-1)}:${this.#open.port}`;
  }

  /** Opens the door in front of an app, or closes it where there is none. Never rejects: what went wrong is its trouble. */
  turn(app: FastifyInstance | null): Promise<void> {
    this.#turning = this.#turning.then(() => (app === null ? this.#shut() : this.#openFor(app)));
    return this.#turning;
  }

  /** Lets time pass: the certificate is looked at once a day. */
  tick(): void {
    if (this.#open !== null && this.#options.clock.now().uptimeMs - this.#lookedAt > LOOK_MS)
      void this.#renew();
  }

  async #openFor(app: FastifyInstance): Promise<void> {
    if (this.#open !== null) return;
    this.#trouble = null;
    const entrance = await this.#entrance();
    if (entrance !== null) {
      try {
        const port = await this.#door.open(app, entrance);
        this.#open = { port, certificate: entrance.by === 'tls' ? entrance.certificate : null };
      } catch (error) {
        this.#trouble = 'port-taken';
        this.#options.log('the door for other devices could not be opened', error);
      }
    }
    this.#options.changed();
  }

  async #shut(): Promise<void> {
    this.#trouble = null;
    this.#open = null;
    await this.#door.close();
    this.#options.changed();
  }

  async #entrance(): Promise<Entrance | null> {
    const { config } = this.#options;
    if (config.proxy !== null) return { by: 'proxy', port: config.proxy.port };
    const certificate = await this.#certificate();
    if (certificate === null) this.#trouble = 'no-certificate';
    return certificate === null ? null : { by: 'tls', port: config.port, certificate };
  }

  async #certificate(): Promise<OwnCertificate | null> {
    const { clock, folder, log } = this.#options;
    const { wallMs, uptimeMs } = clock.now();
    this.#lookedAt = uptimeMs;
    try {
      return await ownCertificate(folder, [...networkNames(), ...networkNumbers()], wallMs);
    } catch (error) {
      log('the certificate of the board could not be kept', error);
      return null;
    }
  }

  async #renew(): Promise<void> {
    const before = this.#open;
    const certificate = await this.#certificate();
    if (before === null || this.#open !== before || certificate === null) return;
    if (certificate.fingerprint === before.certificate?.fingerprint) return;
    this.#door.renew(certificate);
    this.#open = { ...before, certificate };
    this.#options.changed();
  }
}
