import { newcomer } from '../../../core/herd/herd-animal.ts';
import { kilograms } from '../../../core/quantity/mass.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import type { Treatment } from '../../../core/round/treatment.ts';
import { createStore, type Store } from '../../../server/store/store.ts';
import { makeAnimal } from '../../core/make/animal.ts';
import { makeTreatment } from '../../core/make/book.ts';
import { makeJug } from '../../core/make/jug.ts';

/** What of a treatment a test of the day book on disk says; the rest is Anna's dose from jug 7. */
export interface Given {
  readonly id: string;
  readonly animal?: string;
  readonly jug?: string;
  readonly medicine?: string;
  readonly atMs: number;
  readonly trusted?: boolean;
  readonly volumeMl?: number;
  readonly kg?: number;
  readonly by?: string;
  /** What stayed in the syringe of a dose of which only a part went in. */
  readonly leftMl?: number | null;
  /** The group it was a dose of. */
  readonly group?: Treatment['offer']['group'];
  readonly meat?: Treatment['offer']['regimen']['meat'];
  readonly milk?: Treatment['offer']['regimen']['milk'];
  readonly clear?: Partial<Pick<Treatment, 'meat' | 'milk'>>;
}

const PLAIN = makeTreatment();

/** A treatment of which only what matters to a test differs from the plain one. */
export function given(over: Given): Treatment {
  const { offer } = PLAIN;
  const { plan } = offer.dose;
  const weight = kilograms(over.kg ?? 40);
  return {
    ...PLAIN,
    ...over.clear,
    id: over.id,
    givenAtMs: over.atMs,
    clockTrusted: over.trusted ?? true,
    by: over.by ?? 'Kim',
    ...(over.leftMl == null ? {} : { outcome: 'part', left: millilitres(over.leftMl) }),
    offer: {
      ...offer,
      id: `offer of ${over.id}`,
      animal: { ...offer.animal, id: over.animal ?? 'anna', name: over.animal ?? 'anna' },
      jug: { ...offer.jug, id: over.jug ?? 'jug-7', medicineId: over.medicine ?? 'levamisole' },
      regimen: {
        ...offer.regimen,
        meat: over.meat ?? offer.regimen.meat,
        milk: over.milk ?? offer.regimen.milk,
      },
      weight: { held: { ...offer.weight.held, mass: weight }, atMs: over.atMs - 60_000 },
      group: over.group ?? null,
      dose: {
        ...offer.dose,
        plan: { ...plan, total: millilitres(over.volumeMl ?? plan.total.value) },
      },
    },
  };
}

/** A store with four goats, a sheep and two jugs, and nothing in its day book. */
export function bookStore(path = ':memory:'): Store {
  const store = createStore(path);
  for (const id of ['anna', 'bella', 'cora', 'dot'])
    store.animals.add(newcomer(makeAnimal({ id, name: id, tag: null, lastWeight: null })), 'Kim');
  const sheep = makeAnimal({ id: 'fern', name: 'fern', tag: null, species: 'sheep', lastWeight: null });
  store.animals.add(newcomer(sheep), 'Kim');
  store.jugs.add(makeJug());
  store.jugs.add(makeJug({ id: 'jug-8', number: 8 }));
  return store;
}
