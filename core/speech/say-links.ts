import type { Part, SayMemory } from './say-changes.ts';
import type { SayLink, SayScene } from './say-scene.ts';
import type { Saying } from './saying.ts';

const ROLES = ['platform', 'bench', 'wand'] as const;

/** A device that went away, and its coming back. */
export function sayLinks(before: SayMemory, scene: SayScene): Part {
  const links = { ...before.links };
  const sayings: Saying[] = [];
  for (const role of ROLES) {
    // While it is opened again it is still as gone as it was: each further try is not told.
    if (scene.links[role] === 'waking') continue;
    const now = wordFor(links[role], scene.links[role]);
    if (now !== null) sayings.push({ what: 'link', role, now });
    links[role] = scene.links[role];
  }
  const gone = sayings.some((saying) => saying.what === 'link' && saying.now !== 'back');
  return { sayings, earcons: gone ? ['fault'] : [], memory: { links } };
}

function wordFor(was: SayLink, is: SayLink): 'lost' | 'silent' | 'back' | null {
  if (is === 'ready') return was === 'lost' || was === 'silent' ? 'back' : null;
  if (is === 'lost') return was === 'ready' || was === 'silent' ? 'lost' : null;
  return is === 'silent' && was === 'ready' ? 'silent' : null;
}
