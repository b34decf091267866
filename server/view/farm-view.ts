import { medicineById } from '../../core/medicine/formulary.ts';
import { effectOf } from '../../core/round/day-book.ts';
import type { ApartView, FarmView } from '../../shared/farm.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { Apart } from '../store/apart.ts';
import type { NumberedEntry } from '../store/book-records.ts';
import { keptBy } from './kept.ts';
import { rfc3339 } from './times.ts';

const keptAlarms = keptBy<BarnContext, ApartView[]>();

/** The animals dosed at two kiosks that nobody has read of here. A dose that was taken back since is no alarm. */
export function apartView(barn: BarnContext): ApartView[] {
  const { memory, store } = barn;
  return keptAlarms(barn, [memory.recent, memory.animals, store.apart.revision()], () =>
    store.apart.unseen().flatMap((pair) => alarm(barn, pair) ?? []),
  );
}

function alarm({ store, memory }: BarnContext, { one, other }: Apart): ApartView | null {
  const [first, second] = [store.dayBook.entry(one), store.dayBook.entry(other)];
  if (first === undefined || second === undefined) return null;
  const { animalId } = effectOf(first);
  if (animalId === null || effectOf(second).animalId !== animalId) return null;
  const { jug, animal } = first.treatment.offer;
  const named = memory.animals.find(({ id }) => id === animalId) ?? animal;
  return {
    animalId,
    animalName: named.name,
    active: medicineById(memory.formulary, jug.medicineId)?.name ?? jug.medicineId,
    doses: [dose(first), dose(second)],
  };

  function dose(entry: NumberedEntry): ApartView['doses'][number] {
    const kiosk = store.received.kioskOf('treatment', entry.sequence);
    return {
      treatmentId: entry.treatment.id,
      givenAt: rfc3339(entry.treatment.givenAtMs),
      by: entry.treatment.by,
      volumeMl: effectOf(entry).volumeMl,
      graduationMl: entry.treatment.offer.dose.plan.syringe.graduation.value,
      here: kiosk === store.events.self().kiosk,
      kiosk: kiosk === null ? null : store.hubKiosks.nameOf(kiosk),
    };
  }
}

/** The other kiosks of the farm. */
export function farmView(barn: BarnContext): FarmView {
  return { apart: apartView(barn), sharing: barn.farm.view() };
}
