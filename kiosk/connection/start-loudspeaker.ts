import type { Loudspeaker } from '../sound/loudspeaker.ts';
import type { KioskStore } from './kiosk-store.svelte.ts';

/**
 * Fetches the page's loudspeaker and puts it on the line; without Web Audio, or where it cannot be fetched, the page
 * stays silent and the server knows of no page that speaks. Returns the way to let it go.
 */
export function startLoudspeaker(
  store: Pick<KioskStore, 'voice' | 'tell'>,
  onready: (loudspeaker: Loudspeaker) => void,
): () => void {
  let loudspeaker: Loudspeaker | null = null;
  let over = false;
  if (typeof AudioContext !== 'undefined') {
    void import('../sound/loudspeaker.ts')
      .then((module) => {
        if (over) return;
        loudspeaker = new module.Loudspeaker(store.tell);
        store.voice = loudspeaker;
        loudspeaker.greet();
        onready(loudspeaker);
      })
      .catch(() => {});
  }
  return () => {
    over = true;
    store.voice = null;
    loudspeaker?.close();
  };
}
