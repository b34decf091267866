import { type MicrophoneLine, openMicrophone } from './microphone-line.ts';

/**
 * Where the page's microphone stands. `untouched`: open, but the browser holds the sound back until the screen is
 * touched. `blocked` by the browser; `none` plugged in; `busy` in another program; `far`: the page is not one that may
 * have a microphone.
 */
export type MicrophoneState =
  | 'closed'
  | 'opening'
  | 'untouched'
  | 'open'
  | 'blocked'
  | 'none'
  | 'busy'
  | 'far';

/** What a microphone needs, and whom it tells. */
export interface MicrophoneOptions {
  /** Undefined where the browser gives the page none, as over plain HTTP from another machine. */
  readonly devices: MediaDevices | undefined;
  readonly onstate: (state: MicrophoneState) => void;
  /** 16-bit samples of one channel, the low byte first. */
  readonly onsound: (samples: ArrayBuffer) => void;
}

/** How long after a failure it is tried again, in ms; plugging one in, or pressing to talk, tries at once. */
const RETRY_MS = 3000;

/** The page's microphone: opens when wanted, heals when it is plugged in again, and says why it cannot. */
export class Microphone {
  readonly #options: MicrophoneOptions;
  #state: MicrophoneState = 'closed';
  #line: MicrophoneLine | null = null;
  #wanted = false;
  #again: ReturnType<typeof setTimeout> | undefined;
  /** Counts the openings, so that one that was given up cannot end as the one in use. */
  #opening = 0;

  constructor(options: MicrophoneOptions) {
    this.#options = options;
    options.devices?.addEventListener('devicechange', this.#retry);
  }

  /** Where it stands. */
  get state(): MicrophoneState {
    return this.#state;
  }

  /** Samples a second while it is open. */
  get rate(): number | null {
    return this.#line?.rate ?? null;
  }

  /** Wants it open; does nothing where it is, and tries again where it could not be. */
  open(): void {
    this.#wanted = true;
    this.#retry();
  }

  /** Lets it go. */
  close(): void {
    this.#wanted = false;
    this.#drop();
    this.#to('closed');
  }

  /** The page was touched: where the browser waited for that, sound may flow. */
  touched(): void {
    if (this.#state === 'untouched') this.#line?.resume();
  }

  /** Lets it go for good. */
  end(): void {
    this.close();
    this.#options.devices?.removeEventListener('devicechange', this.#retry);
  }

  readonly #retry = (): void => {
    if (this.#wanted && this.#line === null && this.#state !== 'opening') void this.#open();
  };

  async #open(): Promise<void> {
    const { devices, onsound } = this.#options;
    if (devices === undefined) {
      this.#to('far');
      return;
    }
    clearTimeout(this.#again);
    this.#opening += 1;
    const opening = this.#opening;
    const current = (): boolean => this.#opening === opening;
    this.#to('opening');
    try {
      const line = await openMicrophone(devices, {
        onsound: (samples) => {
          if (current()) onsound(samples);
        },
        onflow: () => {
          if (current()) this.#flow();
        },
        onlost: () => {
          if (current()) this.#lose();
        },
      });
      if (!current()) {
        line.close();
        return;
      }
      this.#line = line;
      this.#flow();
      if (!line.flows) line.resume();
    } catch (error) {
      if (current()) this.#fail(whyNot(error));
    }
  }

  #flow(): void {
    if (this.#line !== null) this.#to(this.#line.flows ? 'open' : 'untouched');
  }

  #lose(): void {
    this.#drop();
    this.#fail('none');
  }

  #fail(why: MicrophoneState): void {
    this.#to(why);
    // Blocked is a person's word, and theirs to take back.
    if (why !== 'blocked') this.#again = setTimeout(this.#retry, RETRY_MS);
  }

  #drop(): void {
    clearTimeout(this.#again);
    this.#opening += 1;
    this.#line?.close();
    this.#line = null;
  }

  #to(state: MicrophoneState): void {
    if (state === this.#state) return;
    this.#state = state;
    this.#options.onstate(state);
  }
}

function whyNot(error: unknown): MicrophoneState {
  switch (error instanceof DOMException ? error.name : '') {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'blocked';
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'none';
    default:
      return 'busy';
  }
}
