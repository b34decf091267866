import { type MergeChoices, type MergeField, mergeConflicts } from '../../core/herd/merge.ts';
import type { AnimalView } from '../../shared/animal.ts';

/** What two records say of a field: that of the one that goes on, and that of the one that goes up in it. */
export interface Sides {
  readonly kept: AnimalView;
  readonly gone: AnimalView;
}

function asWorn({ name, class: kind, tag, bornAt }: AnimalView) {
  return { name, class: kind, tag, bornAtMs: bornAt === null ? null : Date.parse(bornAt) };
}

/** The next field to be decided; `null` once all are. */
export function nextToDecide({ kept, gone }: Sides, choices: MergeChoices): MergeField | null {
  return mergeConflicts(asWorn(kept), asWorn(gone)).find((field) => choices[field] === undefined) ?? null;
}

/** Animals that may be the same as one: of its species, those that carry one of its numbers first. */
export function couldBeOne(animal: AnimalView, herd: readonly AnimalView[]): AnimalView[] {
  const others = herd.filter(({ id, species }) => id !== animal.id && species === animal.species);
  const shares = ({ id }: AnimalView) => animal.shares.includes(id);
  return [...others.filter(shares), ...others.filter((other) => !shares(other))];
}

/** The record whose word on a field counts: the one chosen, else the one that knows. */
export function whoKnows({ kept, gone }: Sides, field: MergeField, choices: MergeChoices): AnimalView {
  const silent = {
    name: false,
    class: kept.class === 'young',
    born: kept.bornAt === null,
    tag: kept.tag === null,
  }[field];
  return (choices[field] ?? (silent ? 'gone' : 'kept')) === 'gone' ? gone : kept;
}
