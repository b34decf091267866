import type { PcmFormat } from '../../hardware/ear/pcm.ts';
import type { EarMessage, EarView, MicrophoneMessage } from '../../shared/ear.ts';

/** A page that may have a microphone. */
export interface EarPage {
  /** Whether the page is open on this very machine. */
  readonly own: boolean;
  send(message: EarMessage): void;
}

/** What a page last told of its microphone. */
type Told =
  | { readonly open: PcmFormat }
  | { readonly open: null; readonly why: 'blocked' | 'none' | 'closed' };

/**
 * The microphones of the pages. One of them is listened to: of the pages open on the kiosk's own machine the one that
 * opened its microphone last, so that nobody speaks to the kiosk from afar.
 */
export class PageMicrophones {
  /** The page that told last stands last. */
  readonly #pages = new Map<EarPage, Told>();
  readonly #talking = new Set<EarPage>();

  /** The page that is listened to and how it delivers; `null` while no page may be. */
  get current(): { readonly page: EarPage; readonly format: PcmFormat } | null {
    for (const [page, { open }] of [...this.#pages].reverse()) {
      if (page.own && open !== null) return { page, format: open };
    }
    return null;
  }

  /** The page that does what only a page can: the one listened to, else the one of this machine that told last. */
  get screen(): EarPage | null {
    return this.current?.page ?? [...this.#pages.keys()].findLast(({ own }) => own) ?? null;
  }

  /** Whether the key to talk is held on any page of this machine. */
  get talking(): boolean {
    return this.#talking.size > 0;
  }

  /** Why no page can be listened to, as far as one has told. */
  get trouble(): EarView['trouble'] {
    const told = [...this.#pages].reverse();
    for (const [{ own }, page] of told) {
      if (!own || page.open !== null || page.why === 'closed') continue;
      return page.why === 'blocked' ? 'blocked' : 'no-microphone';
    }
    return told.some(([{ own }, { open }]) => !own && open !== null) ? 'page-far' : null;
  }

  /** Takes what a page tells of its microphone. */
  told(page: EarPage, message: MicrophoneMessage): void {
    if (message.type === 'talk') {
      if (message.on && page.own) this.#talking.add(page);
      else this.#talking.delete(page);
      return;
    }
    const { rate, channels = 1, why = 'closed' } = message;
    this.#pages.delete(page);
    this.#pages.set(page, rate === null ? { open: null, why } : { open: { rate, channels } });
  }

  /** A page is gone: its key is up, and its microphone closed. */
  gone(page: EarPage): void {
    this.#pages.delete(page);
    this.#talking.delete(page);
  }
}
