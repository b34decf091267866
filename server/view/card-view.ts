import type { Advice } from '../../core/dosing/advice.ts';
import { doseCard } from '../../core/dosing/dose-card.ts';
import type { Syringe } from '../../core/dosing/syringe.ts';
import type { Figure } from '../../core/medicine/figure.ts';
import { type Formulary, presentationById } from '../../core/medicine/formulary.ts';
import type { Presentation } from '../../core/medicine/presentation.ts';
import type { Offer } from '../../core/round/offer.ts';
import type { DoseCardView } from '../../shared/dose-card.ts';
import { rfc3339 } from './times.ts';

function sourced({ value, evidence, source }: Figure): DoseCardView['target'] {
  return { value, evidence, source };
}

function adviceView({ change, then }: Advice): DoseCardView['advice'][number] {
  const { syringe, total, draws } = then.plan;
  return {
    change,
    syringeName: syringe.name,
    syringeGraduationMl: syringe.graduation.value,
    volumeMl: total.value,
    draws: draws.length,
    deliveredMgPerKg: { low: then.delivered.low, high: then.delivered.high },
  };
}

/** Where the active, or the strength of a bottle, was read; `null` for what the formulary no longer knows. */
function sourceOf(presentation: Presentation | undefined): string | null {
  if (presentation === undefined) return null;
  return presentation.form === 'powder' ? presentation.activeGrams.source : presentation.strength.source;
}

/** The card of the dose on offer as the wire carries it. */
export function cardView(offer: Offer, onHand: readonly Syringe[], formulary: Formulary): DoseCardView {
  const { regimen, jug, dose, weight, approval } = offer;
  const presentation = presentationById(formulary, jug.packetId)?.presentation;
  const mixedHere = presentation?.form === 'powder';
  const card = doseCard({ weight: weight.held, regimen, jug }, dose, onHand, mixedHere);
  return {
    offerId: offer.id,
    target: sourced(regimen.target),
    ceiling: sourced(regimen.ceiling),
    floor:
      regimen.floor === null
        ? { value: null, evidence: 'not-known', source: 'No source read gives one' }
        : sourced(regimen.floor),
    approved: {
      by: approval.by,
      at: rfc3339(approval.atMs),
      direction: approval.direction,
      vet: approval.vet,
    },
    passesCeiling: card.passesCeiling,
    passesFloor: card.passesFloor,
    parts: [...card.parts],
    leads: card.leads,
    mixed: {
      at: rfc3339(jug.mixedAtMs),
      by: jug.by,
      volumeMl: jug.volume.value,
      source: sourceOf(presentation),
    },
    tolerance: dose.plan.syringe.measured === null ? 'standard' : 'weighed',
    advice: card.advice.map(adviceView),
  };
}
