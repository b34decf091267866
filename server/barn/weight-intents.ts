import { HOUR_MS } from '../../core/moment.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import { lastWeightOf, weighingsOf } from '../herd/history.ts';
import type { BarnContext } from './barn-context.ts';
import { keep } from './shed-intents.ts';

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

/** Writes a person's word on a weight; what the last weight of the animal is follows from it. */
export function sayWeight(barn: BarnContext, intent: Of<'say-weight'>): Refusal | null {
  const { animalId, weighingId, said } = intent;
  return onWeight(barn, animalId, weighingId, () => {
    const { store, clock, memory } = barn;
    const { person } = memory.settings;
    store.weightWords.add(animalId, weighingId, { said }, person, Math.round(clock.now().wallMs));
  });
}

/** Writes how long an animal was off feed before a weight, and keeps it for those weighed from then on. */
export function weightOffFeed(barn: BarnContext, intent: Of<'weight-off-feed'>): Refusal | null {
  const { animalId, weighingId, hours } = intent;
  return onWeight(barn, animalId, weighingId, (atMs) => {
    const { store, clock, memory } = barn;
    const { person } = memory.settings;
    store.weightWords.add(
      animalId,
      weighingId,
      { hoursOffFeed: hours },
      person,
      Math.round(clock.now().wallMs),
    );
    if (intent.round) keep(barn, 'offFeedSinceMs', hours === 0 ? null : Math.round(atMs - hours * HOUR_MS));
  });
}

function onWeight(
  barn: BarnContext,
  animalId: string,
  weighingId: string,
  write: (weighedAtMs: number) => void,
): Refusal | null {
  const { store, memory } = barn;
  const animal = memory.animals.find(({ id }) => id === animalId);
  if (animal === undefined) return 'no-such-animal';
  const found = weighingsOf(animal, store).find(({ weighing }) => weighing.id === weighingId);
  if (found === undefined) return 'no-such-weighing';
  write(found.weighing.atMs);
  const after = { ...animal, lastWeight: lastWeightOf(animal, store) };
  barn.memory = {
    ...barn.memory,
    animals: memory.animals.map((each) => (each === animal ? after : each)),
    herdRevision: memory.herdRevision + 1,
  };
  return null;
}
