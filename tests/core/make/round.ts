import type { Animal } from '../../../core/herd/animal.ts';
import { kilograms } from '../../../core/quantity/mass.ts';
import type { Offer } from '../../../core/round/offer.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import {
  FRESH_ROUND,
  type Phase,
  type Round,
  type RoundEvent,
  type RoundStep,
  type RoundWorld,
  type Step,
} from '../../../core/round/state.ts';
import type { Treatment } from '../../../core/round/treatment.ts';
import { makeAnimal } from './animal.ts';
import { makeHeld } from './held.ts';
import { hoursAgo, UP } from './time.ts';
import { later } from './world.ts';

/** Four animals: Anna and Bella may be dosed, Cora's weight is doubted, Dot is of a species nobody approved. */
export const HERD: readonly Animal[] = [
  makeAnimal(),
  makeAnimal({ id: 'bella', name: 'Bella', tag: '840003123456790' }),
  makeAnimal({
    id: 'cora',
    name: 'Cora',
    tag: null,
    lastWeight: { mass: kilograms(28), atMs: hoursAgo(500) },
  }),
  makeAnimal({ id: 'dot', name: 'Dot', tag: null, species: 'sheep' }),
];

/** The farm of the round tests, some milliseconds after the start. */
export function farm(ms = 0, over: Partial<RoundWorld> = {}): RoundWorld {
  return later(ms, { animals: HERD, ...over });
}

/** Plays events one millisecond apart, each with an id of its own, and gives back every step. */
export function playSteps(
  start: Round,
  events: readonly RoundEvent[],
  world: (ms: number) => RoundWorld = farm,
): RoundStep[] {
  const steps: RoundStep[] = [];
  let round = start;
  for (const [ms, event] of events.entries()) {
    const step = reduceRound(round, event, world(ms));
    steps.push(step);
    round = step.round;
  }
  return steps;
}

/** Plays events and gives back the round; a refusal on the way is a mistake of the test. */
export function play(
  start: Round,
  events: readonly RoundEvent[],
  world: (ms: number) => RoundWorld = farm,
): Round {
  const steps = playSteps(start, events, world);
  const refused = steps.find((step) => step.refused !== null)?.refused;
  if (refused) throw new Error(`the test's own events were refused: ${refused}`);
  return steps.at(-1)?.round ?? start;
}

/** The phase of a round that must stand at one step. */
export function phaseAt<S extends Step>(round: Round, step: S): Extract<Phase, { step: S }> {
  if (round.phase.step !== step) throw new Error(`the round stands at ${round.phase.step}, not ${step}`);
  return round.phase as Extract<Phase, { step: S }>;
}

/** The offer on screen. */
export function offerOf(round: Round): Offer {
  return phaseAt(round, 'offered').offer;
}

/** The treatments a list of steps stored. */
export function storedBy(steps: readonly RoundStep[]): Treatment[] {
  return steps.flatMap((step) =>
    step.effects.flatMap((effect) => (effect.do === 'store' ? [effect.treatment] : [])),
  );
}

/** Takes the jug in hand and proves it. */
export const TO_VISIT: readonly RoundEvent[] = [
  { type: 'take-jug', jugId: 'jug-7' },
  { type: 'prove-jug', jugId: 'jug-7', deliberate: false },
];

/** A tag read. */
export function wand(animalId: string): RoundEvent {
  return { type: 'identified', animalId, via: 'wand' };
}

/** A tile tapped. */
export function tile(animalId: string): RoundEvent {
  return { type: 'identified', animalId, via: 'screen' };
}

/** A weight held on the platform, in kilograms, some milliseconds after the start. */
export function weighed(kg = 40, ms = 0): RoundEvent {
  return { type: 'held', held: makeHeld(kg, { at: UP + ms }) };
}

/** An animal known by its tag, on the platform and weighed. */
export function toWeighed(animalId: string, kg = 40): readonly RoundEvent[] {
  return [...TO_VISIT, wand(animalId), { type: 'stepped-on' }, weighed(kg)];
}

/** The round with Anna's dose on offer. */
export function offeredRound(): Round {
  return play(FRESH_ROUND, toWeighed('anna'));
}
