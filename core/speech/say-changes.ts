import type { CautionCode } from '../dosing/cautions.ts';
import type { Earcon } from './earcon.ts';
import { sayLinks } from './say-links.ts';
import { sayMixing } from './say-mixing.ts';
import { sayRound } from './say-round.ts';
import type { SayLink, SayScene } from './say-scene.ts';
import type { DeckTrouble, PourCall, Saying } from './saying.ts';
import type { SayKey } from './utterance.ts';

/** What is remembered from one moment to the next, so that nothing is said twice. */
export interface SayMemory {
  readonly scene: SayScene;
  /** Each link as it was last known; one that is waking is as it was before. */
  readonly links: Readonly<Record<'platform' | 'bench' | 'wand', SayLink>>;
  /** Troubles of the deck told since it was last empty or holding a weight. */
  readonly deckTold: readonly DeckTrouble[];
  /** Notes told since the jug was taken in hand: one heard at every dose is heard no more. */
  readonly notesTold: readonly CautionCode[];
  /** Calls made since the pour was last far from its target: a reading that trembles calls once. */
  readonly pourTold: readonly PourCall[];
}

/** What comes of a moment: things to say, sounds, and what is to be said no more. */
export interface Said {
  readonly memory: SayMemory;
  readonly sayings: readonly Saying[];
  readonly earcons: readonly Earcon[];
  /** What these are about is over: unsaid, they are dropped, and cut off if being said. */
  readonly hush: readonly SayKey[];
}

/** What one part of the work has to say of a change. */
export type Part = Partial<Omit<Said, 'memory'>> & { readonly memory?: Partial<SayMemory> };

/** Takes the next moment; of the first one nothing is said, since nothing changed. */
export function sayChanges(before: SayMemory | null, scene: SayScene): Said {
  if (before === null) {
    const memory = { scene, links: scene.links, deckTold: [], notesTold: [], pourTold: [] };
    return { memory, sayings: [], earcons: [], hush: [] };
  }
  const parts: Part[] = [sayLinks(before, scene), sayRound(before, scene), sayMixing(before, scene)];
  return {
    memory: Object.assign({ ...before, scene }, ...parts.map(({ memory }) => memory ?? {})),
    sayings: parts.flatMap(({ sayings }) => sayings ?? []),
    earcons: parts.flatMap(({ earcons }) => earcons ?? []),
    hush: parts.flatMap(({ hush }) => hush ?? []),
  };
}
