import type { EarMessage } from '../../shared/ear.ts';
import type { Hearing } from '../hearing/hearing.svelte.ts';
import type { KioskStore } from './kiosk-store.svelte.ts';

type Parts = typeof import('../hearing/parts.ts');

/** The page's half of the ear, and what is drawn of it in the frame. */
export interface PageEar extends Pick<Parts, 'EarLight' | 'SaySheet' | 'TalkPlate'> {
  readonly hearing: Hearing;
}

/** Names by which a page is open on the machine that serves it. */
const OWN = /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/;

/**
 * Fetches the page's half of the ear with its words and puts it on the line; where they cannot be fetched the page is worked by touch.
 * Returns the way to let it go.
 */
export function startHearing(
  store: Pick<KioskStore, 'ear' | 'tell' | 'sendSound'>,
  onwish: (wish: EarMessage['wish']) => void,
  words: () => Promise<void>,
  onready: (ear: PageEar) => void,
): () => void {
  let end: (() => void) | null = null;
  let over = false;
  Promise.all([import('../hearing/parts.ts'), words()])
    .then(([{ Hearing, Fingers, ...drawn }]) => {
      if (over) return;
      const fingers = new Fingers();
      const hearing = new Hearing({
        tell: store.tell,
        sendSound: store.sendSound,
        onwish: (wish) => fingers.whenLifted(() => onwish(wish)),
        own: OWN.test(location.hostname),
        devices: navigator.mediaDevices,
      });
      end = () => {
        fingers.end();
        hearing.end();
      };
      store.ear = hearing;
      hearing.greet();
      onready({ hearing, ...drawn });
    })
    .catch(() => {});
  return () => {
    over = true;
    store.ear = null;
    end?.();
  };
}
