import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import { sameNumber } from '../../core/herd/numbers.ts';
import type { Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';

/** Writes every good row of the preview, all or none, and takes the animals into the herd. */
export function takeIn(barn: BarnContext, previewId: string): Refusal | null {
  const { memory, store, herdFile } = barn;
  const stage = herdFile.stage();
  if (stage.step !== 'ready' || stage.id !== previewId) return 'no-such-preview';
  const { good } = stage.preview;
  if (good.length === 0) return 'nothing-to-take-in';
  const names = new Set(memory.animals.map(({ name }) => sameNumber(name)));
  const tags = new Set(memory.animals.map(({ tag }) => tag));
  const taken = good.some(
    ({ animal }) => names.has(sameNumber(animal.name)) || (animal.tag !== null && tags.has(animal.tag)),
  );
  if (taken) return 'preview-outdated';
  const fresh: HerdAnimal[] = good.map(({ animal }) => ({ ...animal, id: barn.newId() }));
  for (const animal of fresh) store.animals.add(animal, memory.settings.person);
  const { compare } = new Intl.Collator();
  barn.memory = {
    ...memory,
    animals: [...memory.animals, ...fresh].sort((a, b) => compare(a.name, b.name)),
    herdRevision: memory.herdRevision + 1,
    takenIn: { preview: previewId, animals: fresh.length },
  };
  return null;
}
