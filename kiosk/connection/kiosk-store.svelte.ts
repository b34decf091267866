import { getContext, setContext } from 'svelte';
import { v4 as freshId } from 'uuid';
import type { EarMessage, MicrophoneMessage } from '../../shared/ear.ts';
import type { ServerMessage } from '../../shared/message.ts';
import type { VisitorView } from '../../shared/network.ts';
import type { KioskState } from '../../shared/state.ts';
import type { LoudspeakerMessage, VoiceMessage } from '../../shared/voice.ts';
import { applyMessage, CONNECTING, type Feed } from './apply-message.ts';
import { GiveLatch } from './give-latch.ts';
import { ServerLink, type SocketLike } from './server-link.ts';
import { intentFrom, type Wish } from './wish.ts';

const KEY = Symbol('kiosk');
const TOAST_MS = 5000;
/** How the page looks until the server has told its panel and face: the smallest panel, at night. */
const FIRST_LOOK: Pick<KioskState, 'panel' | 'face'> = {
  panel: { widthPx: 800, heightPx: 480, pxPerMm: 5.25 },
  face: 'dim',
};

/** What the server last said, what it refused, and the way to ask it for something. */
export class KioskStore {
  #feed = $state.raw<Feed>(CONNECTING);
  #refusal = $state.raw<string | null>(null);
  #givingOffer = $state.raw<string | null>(null);
  #nowMs = $state.raw(0);
  #look = $state.raw(FIRST_LOOK);
  #visitor = $state.raw<VisitorView>({ kind: 'board' });
  readonly #latch = new GiveLatch();
  readonly #link: ServerLink;
  #clock = { wallMs: 0, at: 0 };
  #ticking: ReturnType<typeof setInterval> | undefined;
  #toast: ReturnType<typeof setTimeout> | undefined;

  constructor(open: () => SocketLike, page: string | null = null) {
    this.#link = new ServerLink({
      open,
      page,
      onMessage: (message) => this.#take(message),
      onCut: () => this.#cut({ status: 'cut' }),
      onMismatch: () => this.#cut({ status: 'mismatch' }),
    });
  }

  /** Where the connection stands. */
  get status(): Feed['status'] {
    return this.#feed.status;
  }

  /** The state, or `null` whenever it is not current. */
  get state(): KioskState | null {
    return this.#feed.status === 'live' ? this.#feed.state : null;
  }

  /** Panel and face as last told: unlike a reading they still fit while the server is away. */
  get look(): Pick<KioskState, 'panel' | 'face'> {
    return this.#look;
  }

  /** Whose page this is: the board's own, or that of a paired device. */
  get visitor(): VisitorView {
    return this.#visitor;
  }

  /** Why the last intent was refused, for a few seconds. */
  get refusal(): string | null {
    return this.#refusal;
  }

  /** The offer for which a give is on its way. */
  get givingOffer(): string | null {
    return this.#givingOffer;
  }

  /** The server's clock, carried on between its messages: milliseconds since 1970. */
  get nowMs(): number {
    return this.#nowMs;
  }

  /** Opens the connection; the function returned closes it. */
  start(): () => void {
    this.#link.start();
    this.#ticking = setInterval(() => this.#tick(), 1000);
    return () => {
      this.#link.stop();
      clearInterval(this.#ticking);
      clearTimeout(this.#toast);
    };
  }

  /** Hears what is to be said aloud, and of each new connection; what came before anybody listened is not kept. */
  voice: { take(message: VoiceMessage): void; greet(): void } | null = null;

  /** Hears what was asked of the page aloud, and of each new connection. */
  ear: { take(message: EarMessage): void; greet(): void } | null = null;

  /** Tells the server how this page's loudspeaker and microphone fare, while there is one to tell. */
  readonly tell = (message: LoudspeakerMessage | MicrophoneMessage): void => {
    if (this.#feed.status === 'live') this.#link.send(message);
  };

  /** Sends what the microphone hears; sound is never kept for later. */
  readonly sendSound = (samples: ArrayBuffer): void => {
    if (this.#feed.status === 'live') this.#link.sendSound(samples);
  };

  /** Asks the server for something. A give goes out once for each offer. */
  readonly send = (wish: Wish): void => {
    const id = freshId();
    if (wish.type === 'give' && !this.#latch.close(wish.offerId, id)) return;
    this.#givingOffer = this.#latch.offerId;
    this.#link.send({ type: 'intent', intent: intentFrom(wish, id) });
  };

  #take(message: ServerMessage): void {
    if (message.type === 'say' || message.type === 'hush' || message.type === 'earcon') {
      this.voice?.take(message);
      return;
    }
    if (message.type === 'spoken-wish') {
      this.ear?.take(message);
      return;
    }
    if (message.type === 'hello' || message.type === 'visitor') this.#visitor = message.visitor;
    const before = stepsOf(this.state);
    this.#feed = applyMessage(this.#feed, message);
    if (stepsOf(this.state) !== before) this.#refusal = null;
    if (this.state !== null) this.#look = this.state;
    if (message.type === 'snapshot') {
      this.voice?.greet();
      this.ear?.greet();
    }
    if (message.type === 'answer' && !message.answer.ok) {
      this.#latch.refused(message.answer.id);
      this.#show(message.answer.message);
    }
    if (this.state?.offer?.id !== this.#latch.offerId) this.#latch.open();
    this.#givingOffer = this.#latch.offerId;
    const now = message.type === 'snapshot' ? message.state.now : patchedNow(message);
    if (now !== undefined) {
      this.#clock = { wallMs: Date.parse(now), at: performance.now() };
      this.#tick();
    }
  }

  #tick(): void {
    this.#nowMs = this.#clock.wallMs + performance.now() - this.#clock.at;
  }

  #cut(feed: Feed): void {
    this.#feed = feed;
    this.#latch.open();
    this.#givingOffer = null;
  }

  #show(text: string): void {
    this.#refusal = text;
    clearTimeout(this.#toast);
    this.#toast = setTimeout(() => {
      this.#refusal = null;
    }, TOAST_MS);
  }
}

/** Where all the work stands: once any of it moved on, what was refused before says nothing. */
function stepsOf(state: KioskState | null): string {
  if (state === null) return '';
  const { round, offer, jug, check, syringeCheck, shed } = state;
  return [round.step, offer?.id, jug.step, check.step, syringeCheck.step, shed.setup.step].join();
}

function patchedNow(message: ServerMessage): string | undefined {
  return message.type === 'patch' ? message.changes.now : undefined;
}

/** Makes the store of a page and puts it in context; `page` is the script it began with, where that is known. */
export function createKiosk(open: () => SocketLike, page: string | null): KioskStore {
  return setContext(KEY, new KioskStore(open, page));
}

/** The store of the page. */
export function useKiosk(): KioskStore {
  return getContext<KioskStore>(KEY);
}
