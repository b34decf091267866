import { examplesOf } from '../../core/speech/examples.ts';
import type { Grammar } from '../../core/speech/jsgf.ts';
import { type MayBeHeard, mayBeHeard, type Scene } from '../../core/speech/may-be-heard.ts';
import { asleep } from '../../core/speech/wake.ts';
import type { EarView } from '../../shared/ear.ts';
import { phrasesHangOn } from './hearing-scene.ts';

/** The phrases an ear was told, and what a screen shows of them. */
export interface Phrases {
  /** Looks whether other phrases may be heard; a sleeping kiosk hears its wake phrase alone. */
  look(scene: Scene, awake: boolean): void;
  shown(): Pick<EarView, 'phrases' | 'leftOut'>;
}

/**
 * Tells an ear its phrases, and only when they are others: to learn them takes the engine a moment, and a weight that
 * moves must not cost one.
 */
export function createPhrases(tell: (may: MayBeHeard) => Pick<Grammar, 'unsayable'>): Phrases {
  let hungOn: readonly unknown[] = [];
  let written = '';
  let shown: Pick<EarView, 'phrases' | 'leftOut'> = { phrases: [], leftOut: [] };
  return {
    look(scene, awake) {
      const hangsOn = [...phrasesHangOn(scene), awake];
      if (hangsOn.length === hungOn.length && hangsOn.every((part, at) => part === hungOn[at])) return;
      hungOn = hangsOn;
      const now = mayBeHeard(scene);
      const may = awake ? now : asleep(now);
      const asWritten = JSON.stringify(may);
      if (asWritten === written) return;
      written = asWritten;
      const { unsayable } = tell(may);
      shown = {
        phrases: examplesOf(may),
        leftOut: [
          ...may.leftOut.map(({ what, why }) => ({ animal: what, why })),
          // "animal xyz": the name alone is what cannot be said.
          ...unsayable.map((words) => ({
            animal: words.split(' ').slice(1).join(' '),
            why: 'unsayable' as const,
          })),
        ],
      };
    },
    shown: () => shown,
  };
}
