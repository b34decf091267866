import { type Animal, likeliest } from '../../core/herd/animal.ts';
import { medicineById } from '../../core/medicine/formulary.ts';
import { mayBeInUse } from '../../core/mixing/jug.ts';
import type { Moment } from '../../core/moment.ts';
import type { Phase, Visit } from '../../core/round/state.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { RoundView } from '../../shared/round.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { Memory } from '../barn/memory.ts';
import { afterDoseView } from './after-view.ts';
import { cautionView, offerView, treatmentView } from './dose-view.ts';
import { proofView } from './proof-view.ts';
import { atUptime, rfc3339 } from './times.ts';

/** The round as the wire carries it. */
export function roundView(barn: BarnContext, now: Moment): RoundView {
  const { memory } = barn;
  const { phase } = memory.round;
  const unanswered = memory.round.unanswered.map((offer) => offerView(offer, memory.formulary));
  switch (phase.step) {
    case 'no-jug':
      return { step: 'no-jug', unanswered };
    case 'prove-jug':
      return { step: 'prove-jug', ...proofView(barn, phase, now), unanswered };
    case 'visit':
      return {
        step: 'visit',
        ...visitView(phase.jugId, phase.visit),
        likely: likely(memory, phase.visit),
        unanswered,
      };
    case 'which-animal':
      return {
        step: 'which-animal',
        ...visitView(phase.jugId, phase.visit),
        between: [...phase.between],
        unanswered,
      };
    case 'cautions':
      return {
        step: 'cautions',
        ...visitView(phase.jugId, phase.visit),
        cautions: phase.decision.cautions.map(cautionView),
        accepted: [...phase.accepted],
        unanswered,
      };
    case 'offered':
    case 'logging':
      return { step: phase.step, ...visitView(phase.jugId, phase.visit), unanswered };
    case 'logged': {
      const { id } = phase.treatment;
      const entry =
        memory.recent.find(({ treatment }) => treatment.id === id) ?? barn.store.dayBook.entry(id);
      if (entry === undefined) throw new Error(`treatment ${id} is logged and not in the day book`);
      return {
        step: 'logged',
        ...visitView(phase.jugId, phase.visit),
        treatment: treatmentView(entry, memory.animals, memory.formulary),
        after: afterDoseView(phase.treatment.offer.jug.medicineId, memory.formulary),
        followUps: followUps(barn, phase, now),
        undoUntil: atUptime(phase.undoUntil, now),
        unanswered,
      };
    }
    default:
      return unreachable(phase);
  }
}

/** What may follow a dose for the same animal; nothing where its weight is gone with the link. */
function followUps(
  { memory, clock }: BarnContext,
  { jugId, visit, treatment }: Extract<Phase, { step: 'logged' }>,
  now: Moment,
): { jugId: string; rest: boolean }[] {
  if (visit.weight === null || visit.who === null) return [];
  const { regimen } = treatment.offer;
  const rest = regimen.topUp && treatment.left !== null;
  const medicineId = memory.jugs.find(({ id }) => id === jugId)?.medicineId ?? '';
  const extras = medicineById(memory.formulary, medicineId)?.extras ?? [];
  const due = memory.jugs.filter(
    (jug) =>
      extras.some((extra) => extra.medicineId === jug.medicineId) &&
      mayBeInUse(jug, now.wallMs, clock.isTrusted()),
  );
  return [...(rest ? [{ jugId, rest }] : []), ...due.map(({ id }) => ({ jugId: id, rest: false }))];
}

function visitView(jugId: string, visit: Visit) {
  const { weight } = visit;
  return {
    jugId,
    animal: visit.who?.animalId ?? null,
    weight:
      weight === null
        ? null
        : {
            grams: weight.held.mass.value,
            uncertaintyGrams: weight.held.uncertainty.value,
            at: rfc3339(weight.atMs),
          },
    onDeck: visit.onDeck,
  };
}

/** Animals for the tiles: by the weight held or live where there is one, else by name. */
function likely(memory: Memory, visit: Visit): string[] {
  const weight = visit.weight?.held.mass ?? (memory.deck.onSince === null ? null : memory.deck.live);
  const order: readonly Animal[] = weight === null ? memory.animals : likeliest(memory.animals, weight);
  return order.map((animal) => animal.id);
}
