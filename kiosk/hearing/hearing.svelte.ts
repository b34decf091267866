import type { EarMessage, EarView, MicrophoneMessage } from '../../shared/ear.ts';
import { Footswitch } from './footswitch.ts';
import {
  type Heard,
  hasEar,
  type Light,
  lightOf,
  microphoneTrouble,
  type Trouble,
  troubleOf,
} from './light.ts';
import { loudness } from './loudness.ts';
import { Microphone, type MicrophoneState } from './microphone.ts';
import { Talk } from './talk.ts';

/** How long what was heard stays on the light, in ms: what was not done is read more slowly. */
const SHOWN_MS = { done: 5000, refused: 9000, 'not-understood': 6000 } as const;

/** What hearing needs of the page. */
export interface HearingOptions {
  /** Tells the server; lost while there is none. */
  readonly tell: (message: MicrophoneMessage) => void;
  /** Sends 16-bit samples; what the line cannot take at once is dropped. */
  readonly sendSound: (samples: ArrayBuffer) => void;
  /** Does what only the page can do. */
  readonly onwish: (wish: EarMessage['wish']) => void;
  /** Whether the page is open on the kiosk's own machine: no other is listened to. */
  readonly own: boolean;
  readonly devices: MediaDevices | undefined;
}

/** The page's half of the ear: its microphone, what is held to talk, and what is shown of what was heard. */
export class Hearing {
  readonly #options: HearingOptions;
  readonly #microphone: Microphone;
  readonly #talk = new Talk((on) => this.#talked(on));
  readonly footswitch = new Footswitch(this.#talk);
  #ear = $state.raw<EarView | null>(null);
  #microphoneState = $state.raw<MicrophoneState>('closed');
  #heard = $state.raw<Heard | null>(null);
  #talking = $state.raw(false);
  #level = $state.raw<number | null>(null);
  #sheetOpen = $state.raw(false);
  /** The keeper has pressed to talk: from then on the microphone stays open, since opening it swallows the first word. */
  #pressed = false;
  #tested = false;
  #stays = false;
  /** What the server was told of the microphone since it greeted; `null` for nothing. */
  #told: string | null = null;
  /** Whether the server was told of an open microphone, and so takes its sound. */
  #sends = false;
  #lastNumber: number | null = null;
  #fading: ReturnType<typeof setTimeout> | undefined;

  constructor(options: HearingOptions) {
    this.#options = options;
    this.#microphone = new Microphone({
      devices: options.devices,
      onstate: (state) => this.#microphoneTo(state),
      onsound: (samples) => this.#sound(samples),
    });
    document.addEventListener('visibilitychange', this.#see);
    addEventListener('pointerup', this.#touched, { capture: true, passive: true });
    addEventListener('keydown', this.#touched, { capture: true, passive: true });
  }

  /** The ear as the server shows it; `null` while there is none, or nothing current is known of it. */
  get ear(): EarView | null {
    return this.#ear !== null && hasEar(this.#ear) ? this.#ear : null;
  }

  /** Whether the page has a plate to talk by: no other than the kiosk's own is listened to. */
  get canTalk(): boolean {
    return this.ear !== null && this.#options.own;
  }

  /** Whether the page is open on the kiosk's own machine. */
  get own(): boolean {
    return this.#options.own;
  }

  /** Where the page's microphone stands. */
  get microphone(): MicrophoneState {
    return this.#microphoneState;
  }

  /** How loud the microphone is, in dB under full scale, so never above 0; `null` while it is not open. */
  get level(): number | null {
    return this.#level;
  }

  /** Whether the keeper holds something to talk. */
  get talking(): boolean {
    return this.#talking;
  }

  /** What was heard in the last seconds. */
  get heard(): Heard | null {
    return this.#heard;
  }

  /** Why what was heard last was not done, or what to do instead, while it is shown. */
  get refusal(): string | null {
    return this.#heard?.outcome === 'done' ? null : (this.#heard?.sentence ?? null);
  }

  /** What keeps it from hearing. */
  get trouble(): Trouble | null {
    return this.ear === null ? null : troubleOf(this.ear, this.#microphoneState, this.#options.own);
  }

  /** What ails the page's own microphone, whether the ear uses it or not. */
  get microphoneTrouble(): Trouble | null {
    return microphoneTrouble(this.#microphoneState);
  }

  /** What the light shows; `null` where there is no ear. */
  get light(): Light | null {
    if (this.ear === null) return null;
    const opening = this.#microphoneState === 'opening' && this.ear.source !== 'board';
    return lightOf(this.ear, { trouble: this.trouble, opening, heard: this.#heard });
  }

  /** Whether what may be said is shown. */
  get sheetOpen(): boolean {
    return this.#sheetOpen;
  }

  /** Shows what may be said, or puts it away. */
  readonly openSheet = (open: boolean): void => {
    this.#sheetOpen = open;
  };

  /** Something is held to talk. */
  readonly press = (by: string): void => {
    if (!this.canTalk) return;
    this.#pressed = true;
    this.#talk.press(by);
    this.#want();
  };

  /** It was let go. */
  readonly release = (by: string): void => this.#talk.release(by);

  /** Opens the microphone for its test, whatever else it is wanted for; the function returned ends that. */
  readonly test = (): (() => void) => {
    const tested = (on: boolean): void => {
      this.#tested = on;
      this.#want();
    };
    tested(true);
    return () => tested(false);
  };

  /** Keeps the screen where it is, whatever screen is asked for aloud; the function returned ends that. */
  readonly stay = (): (() => void) => {
    this.#stays = true;
    return () => {
      this.#stays = false;
    };
  };

  /** The connection is new: the server knows nothing of this page yet. */
  greet(): void {
    this.#told = null;
    this.#sends = false;
    this.#report();
    if (this.#talk.on) this.#options.tell({ type: 'talk', on: true });
  }

  /** Does what was asked of the page aloud. */
  take({ wish }: EarMessage): void {
    this.#sheetOpen = false;
    if (this.#stays && wish.type === 'screen') return;
    this.#options.onwish(wish);
  }

  /** Follows the ear of the state; `null` where the kiosk is not at work. */
  follow(ear: EarView | null): void {
    this.#ear = ear;
    this.footswitch.use(ear !== null && this.canTalk ? ear.key : null);
    if (ear === null || !hasEar(ear)) {
      this.#talk.releaseAll();
      this.#sheetOpen = false;
    }
    if (ear !== null) this.#hear(ear.heard);
    this.#want();
  }

  /** Lets everything go. */
  end(): void {
    clearTimeout(this.#fading);
    document.removeEventListener('visibilitychange', this.#see);
    removeEventListener('pointerup', this.#touched, { capture: true });
    removeEventListener('keydown', this.#touched, { capture: true });
    this.footswitch.end();
    this.#microphone.end();
  }

  /** What was heard before the page came is old: only what comes after it is shown. */
  #hear(heard: Heard | null): void {
    const number = heard?.number ?? 0;
    const fresh = this.#lastNumber !== null && number !== this.#lastNumber;
    this.#lastNumber = number;
    if (!fresh) return;
    this.#heard = heard;
    if (heard?.outcome === 'done') this.#sheetOpen = false;
    clearTimeout(this.#fading);
    if (heard === null) return;
    this.#fading = setTimeout(() => {
      this.#heard = null;
    }, SHOWN_MS[heard.outcome]);
  }

  /** Opens or closes the microphone, as it is wanted now. */
  #want(): void {
    const ear = this.ear;
    const forEar =
      ear !== null &&
      ear.source !== 'board' &&
      (ear.mode === 'wake' || (ear.mode === 'press' && this.#pressed));
    const wanted = this.#options.own && (forEar || this.#tested) && document.visibilityState !== 'hidden';
    if (!wanted) this.#microphone.close();
    else if (this.#microphoneState === 'closed' || this.#talk.on) this.#microphone.open();
    this.#report();
  }

  #microphoneTo(state: MicrophoneState): void {
    this.#microphoneState = state;
    if (state !== 'open') this.#level = null;
    this.#report();
  }

  /** Tells the server of the microphone, where that is news to it. */
  #report(): void {
    const message = this.#standing();
    const told = JSON.stringify(message);
    if (message === null || told === this.#told) return;
    // A server that has not heard of any microphone needs no word that there is none.
    if (this.#told === null && message.why === 'closed') return;
    this.#told = told;
    this.#sends = message.rate !== null;
    this.#options.tell(message);
  }

  #standing(): Extract<MicrophoneMessage, { type: 'microphone' }> | null {
    if (this.ear === null) return { type: 'microphone', rate: null, why: 'closed' };
    switch (this.#microphoneState) {
      case 'open':
        return { type: 'microphone', rate: this.#microphone.rate, channels: 1 };
      case 'blocked':
        return { type: 'microphone', rate: null, why: 'blocked' };
      case 'none':
      case 'busy':
      case 'far':
        return { type: 'microphone', rate: null, why: 'none' };
      case 'closed':
        return { type: 'microphone', rate: null, why: 'closed' };
      case 'opening':
      case 'untouched':
        return null;
    }
  }

  #sound(samples: ArrayBuffer): void {
    this.#level = loudness(new Int16Array(samples));
    if (this.#sends) this.#options.sendSound(samples);
  }

  #talked(on: boolean): void {
    this.#talking = on;
    // What was heard before is answered by talking again.
    if (on) this.#heard = null;
    this.#options.tell({ type: 'talk', on });
  }

  readonly #see = (): void => this.#want();
  readonly #touched = (): void => this.#microphone.touched();
}
