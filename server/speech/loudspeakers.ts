import type { LoudspeakerMessage, VoiceMessage } from '../../shared/voice.ts';

/** A page's way to be told what to say. */
export interface Loudspeaker {
  /** Whether the page is open on this very machine. */
  readonly own: boolean;
  send(message: VoiceMessage): void;
}

/** What a page last told of itself. */
interface Known {
  readonly can: boolean;
  readonly words: boolean;
}

/**
 * The pages that may speak. One of them does: of the pages open on the kiosk's own machine the one that was last
 * touched, so that a telephone that follows the work stays silent and two tabs never speak at once.
 */
export class Loudspeakers {
  /** The page last touched stands last. */
  readonly #pages = new Map<Loudspeaker, Known>();
  readonly #changed: (speakerChanged: boolean) => void;

  /** `changed` hears of every change, and whether another page, or none, speaks from here on. */
  constructor(changed: (speakerChanged: boolean) => void) {
    this.#changed = changed;
  }

  /** The page that speaks, or `null` while none may. */
  get current(): Loudspeaker | null {
    return [...this.#pages].findLast(([page, { can }]) => page.own && can)?.[0] ?? null;
  }

  /** Whether the page that speaks can make words of its own. */
  get words(): boolean {
    const page = this.current;
    return page !== null && this.#pages.get(page)?.words === true;
  }

  /** Whether a page of this machine is open, heard or not. */
  get open(): boolean {
    return [...this.#pages.keys()].some(({ own }) => own);
  }

  /** Takes what a page tells of itself. */
  told(page: Loudspeaker, { can, words }: Extract<LoudspeakerMessage, { type: 'loudspeaker' }>): void {
    const before = this.current;
    this.#pages.delete(page);
    this.#pages.set(page, { can, words });
    this.#changed(this.current !== before);
  }

  /** A page is gone. */
  gone(page: Loudspeaker): void {
    const before = this.current;
    if (this.#pages.delete(page)) this.#changed(this.current !== before);
  }
}
