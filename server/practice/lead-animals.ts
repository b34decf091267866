import { nextHerding } from '../../core/practice/herdsman.ts';
import type { TrayAction } from '../../shared/tray.ts';
import type { BarnContext } from '../barn/barn-context.ts';

/** How often the yard is looked at, in milliseconds: slow enough to be followed. */
const LOOK_MS = 1500;

/** Leads animals of the demo herd over the platform for whoever practises, one after the other. Answers how to stop it. */
export function leadAnimals(barn: BarnContext): () => void {
  let standing: string | null = null;
  // Dry ones first: of their milk nothing needs asking.
  let waiting = barn.memory.animals
    .filter(({ species, tag, inMilk }) => species === 'goat' && tag !== null && !inMilk)
    .map(({ id }) => id);

  function move(action: TrayAction): void {
    barn.tray?.(action, barn.memory);
  }
  function look(): void {
    const { round, deck } = barn.memory;
    const next = nextHerding({ phase: round.phase, empty: deck.verdict === 'empty', standing, waiting });
    if (next === null) return;
    if (next.do === 'walk-off') {
      standing = null;
      move({ do: 'walk-off' });
      return;
    }
    standing = next.animalId;
    waiting = waiting.filter((id) => id !== standing);
    move({ do: 'present-tag', animalId: standing });
    move({ do: 'lead-on', animalId: standing, grams: null, grade: 'calm' });
  }
  const looking = setInterval(look, LOOK_MS);
  return () => clearInterval(looking);
}
