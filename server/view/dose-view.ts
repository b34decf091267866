import type { Caution } from '../../core/dosing/cautions.ts';
import type { Clear } from '../../core/dosing/withdrawal.ts';
import type { Animal } from '../../core/herd/animal.ts';
import { type Formulary, medicineById } from '../../core/medicine/formulary.ts';
import type { Offer } from '../../core/round/offer.ts';
import type { Correction } from '../../core/round/treatment.ts';
import type { CautionView, ClearView, CorrectionView, OfferView, TreatmentView } from '../../shared/dose.ts';
import type { NumberedEntry } from '../store/book-records.ts';
import { jugStockView } from './jug-view.ts';
import { rfc3339 } from './times.ts';

/** The measured dose, the same for the offer shown and the treatment logged. */
function measuredView(offer: Offer, formulary: Formulary) {
  const { animal, jug, dose, regimen, weight } = offer;
  const { plan, budget } = dose;
  return {
    animal: animal.id,
    animalName: animal.name,
    species: animal.species,
    active: medicineById(formulary, jug.medicineId)?.active ?? jug.medicineId,
    jugId: jug.id,
    jugNumber: jug.number,
    volumeMl: plan.total.value,
    exactVolumeMl: dose.exact.value,
    syringe: plan.syringe.id,
    syringeName: plan.syringe.name,
    syringeCapacityMl: plan.syringe.capacity.value,
    syringeGraduationMl: plan.syringe.graduation.value,
    draws: plan.draws.length,
    marksMl: plan.draws.map((draw) => draw.value),
    strengthMgPerMl: jug.strength.value,
    targetMgPerKg: regimen.target.value,
    deliveredMgPerKg: dose.delivered,
    shares: budget.contributions.map(({ of }, i) => ({ of, share: budget.shares[i] ?? 0 })),
    weightGrams: weight.held.mass.value,
    weightUncertaintyGrams: weight.held.uncertainty.value,
    weighedAt: rfc3339(weight.atMs),
    proof: offer.proof?.how ?? null,
    route: regimen.route,
  };
}

/** An offer as the wire carries it. */
export function offerView(offer: Offer, formulary: Formulary): OfferView {
  const medicine = medicineById(formulary, offer.jug.medicineId);
  return {
    id: offer.id,
    ...measuredView(offer, formulary),
    agitate: medicine?.agitate.how ?? 'shake',
    technique: { how: medicine?.technique.how ?? 'other', text: medicine?.technique.line.text ?? '' },
    cautions: offer.cautions.map(cautionView),
    expiresAt: rfc3339(offer.expiresAtMs),
  };
}

/** A caution as the wire carries it. */
export function cautionView(caution: Caution): CautionView {
  return { code: caution.code, strength: caution.strength, values: { ...caution.values } };
}

function clearView(clear: Clear): ClearView {
  return clear.kind === 'at' ? { kind: 'at', at: rfc3339(clear.atMs) } : { kind: clear.kind };
}

function correctionView(correction: Correction, animals: readonly Animal[]): CorrectionView {
  const { what } = correction;
  const animal = what.kind === 'wrong-animal' ? what.animalId : null;
  return {
    id: correction.id,
    kind: what.kind,
    animal,
    animalName: animals.find((candidate) => candidate.id === animal)?.name ?? null,
    volumeMl: what.kind === 'wrong-volume' ? what.volumeMl : null,
    meat: what.kind === 'vet-time' ? what.meat : null,
    milk: what.kind === 'vet-time' ? what.milk : null,
    at: rfc3339(correction.atMs),
    by: correction.by,
  };
}

function basisView(group: Offer['group']): TreatmentView['group'] {
  if (group === null) return null;
  const { heaviestName, heaviest, weighedAtMs, members } = group;
  return { heaviestName, heaviestGrams: heaviest.value, weighedAt: rfc3339(weighedAtMs), members };
}

/** A row of the day book as the wire carries it. */
export function treatmentView(
  entry: NumberedEntry,
  animals: readonly Animal[],
  formulary: Formulary,
): TreatmentView {
  const { sequence, treatment, corrections } = entry;
  return {
    id: treatment.id,
    sequence,
    offerId: treatment.offer.id,
    ...measuredView(treatment.offer, formulary),
    outcome: treatment.outcome,
    leftMl: treatment.left?.value ?? null,
    group: basisView(treatment.offer.group),
    givenAt: rfc3339(treatment.givenAtMs),
    provisional: !treatment.clockTrusted,
    by: treatment.by,
    readBack: treatment.readBack,
    late: treatment.late,
    direction: treatment.offer.approval.direction,
    stock: jugStockView(treatment.offer.jug),
    meatClear: clearView(treatment.meat),
    milkClear: clearView(treatment.milk),
    acceptedCautions: treatment.accepted.map(cautionView),
    corrections: corrections.map((correction) => correctionView(correction, animals)),
  };
}

/** Rows of the day book as the wire carries them, in the order given. */
export function dayBookView(
  entries: readonly NumberedEntry[],
  animals: readonly Animal[],
  formulary: Formulary,
): TreatmentView[] {
  return entries.map((entry) => treatmentView(entry, animals, formulary));
}
