import { expect } from 'vitest';
import type { SetupRig } from './setup-rig.ts';

/** Listens at a port until the proposals stand. */
export async function proposals(rig: SetupRig, role: 'platform' | 'bench' | 'wand', path: string) {
  expect(rig.setup.listen(role, path)).toBeNull();
  await rig.timers.advance(60_000);
  return rig.view('proposals').proposals;
}

/** Puts the first proposal of a format on trial and lets it run. */
export async function trial(rig: SetupRig, role: 'platform' | 'bench', path: string, profile: string) {
  const index = (await proposals(rig, role, path)).findIndex((each) => each.profile === profile);
  expect(rig.setup.try(role, index)).toBeNull();
  await rig.timers.advance(4000);
  return rig.view('trial');
}
