import type { SayScene } from '../../../core/speech/say-scene.ts';

/** A barn at rest: a jug in hand, nobody on the platform. */
export const AT_REST: SayScene = {
  links: { platform: 'ready', bench: 'ready', wand: 'ready' },
  deck: 'empty',
  step: 'visit',
  jug: '7',
  animal: null,
  weight: null,
  cautions: [],
  accepted: [],
  offer: null,
  logged: null,
  correction: null,
  unanswered: { count: 0, name: null },
  pour: null,
  powder: null,
  unknownTag: null,
  // A Wednesday, 14:00 in Dublin.
  nowMs: Date.UTC(2027, 3, 14, 13),
  timeZone: 'Europe/Dublin',
};

/** A goat. */
export const CLOVER = { id: 'a1', name: 'Clover', inMilk: true, called: false };

/** Its dose. */
export const DOSE = {
  id: 'offer-1',
  total: '3.3 mL',
  marks: ['3.3 mL'],
  syringe: '6 mL',
  agitate: 'swirl',
} as const;

/** The same in the day book. */
export const LOGGED = {
  id: 't1',
  name: 'Clover',
  outcome: 'whole',
  inMilk: true,
  milk: { kind: 'at', atMs: Date.UTC(2027, 3, 16, 13) },
  meat: { kind: 'unknown' },
  provisional: false,
} as const;
