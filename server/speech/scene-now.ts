import { medicineById } from '../../core/medicine/formulary.ts';
import { showNumber, showVolume, showWeight, USUAL_DIVISION } from '../../core/quantity/show.ts';
import type { Offer } from '../../core/round/offer.ts';
import type { SayLink, SayScene } from '../../core/speech/say-scene.ts';
import type { LinkStatus } from '../../shared/shed.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { Memory } from '../barn/memory.ts';
import { pourView } from '../view/pour-view.ts';

const LINKS: Readonly<Record<LinkStatus, SayLink>> = {
  absent: 'absent',
  opening: 'waking',
  settling: 'waking',
  ready: 'ready',
  silent: 'silent',
  lost: 'lost',
};

/** What there is to be said something about now; every number as the screen shows it. */
export function sceneNow(barn: BarnContext): SayScene {
  const { memory, clock, config, linkOf } = barn;
  const { phase, unanswered } = memory.round;
  return {
    links: {
      platform: LINKS[linkOf('platform')],
      bench: LINKS[linkOf('bench')],
      wand: LINKS[linkOf('wand')],
    },
    deck: memory.deck.verdict,
    step: phase.step,
    jug: 'jugId' in phase ? numberOf(phase.jugId, memory) : null,
    animal: animalNow(memory),
    weight: weightNow(memory),
    cautions:
      phase.step === 'cautions'
        ? phase.decision.cautions
        : phase.step === 'offered'
          ? phase.offer.cautions
          : [],
    accepted: phase.step === 'cautions' ? phase.accepted : [],
    offer: phase.step === 'offered' || phase.step === 'logging' ? offerNow(phase.offer, memory) : null,
    logged: loggedNow(memory),
    correction: correctionNow(memory),
    unanswered: { count: unanswered.length, name: unanswered.at(-1)?.animal.name ?? null },
    pour: memory.mixing.step === 'pour' ? pourView(memory.mixing, memory).advice : null,
    powder: powderNow(memory),
    unknownTag: memory.unknownTag,
    nowMs: clock.now().wallMs,
    timeZone: config.timeZone,
  };
}

function numberOf(jugId: string, { jugs }: Memory): string | null {
  const number = jugs.find(({ id }) => id === jugId)?.number;
  return number === undefined ? null : String(number);
}

function animalNow({ round, animals }: Memory): SayScene['animal'] {
  const who = 'visit' in round.phase ? round.phase.visit?.who : null;
  const animal = animals.find(({ id }) => id === who?.animalId);
  if (animal === undefined) return null;
  const { id, name, inMilk } = animal;
  return { id, name, inMilk, called: who?.via === 'voice' };
}

function weightNow({ round, deck, settings }: Memory): string | null {
  const weight = 'visit' in round.phase ? (round.phase.visit?.weight ?? null) : null;
  if (weight === null) return null;
  return showWeight(weight.held.mass, settings.weightUnit, deck.division ?? USUAL_DIVISION);
}

function offerNow({ id, dose, jug }: Offer, { formulary }: Memory): SayScene['offer'] {
  const { draws, total, syringe } = dose.plan;
  return {
    id,
    total: showVolume(total, syringe.graduation),
    marks: draws.map((draw) => showVolume(draw, syringe.graduation)),
    syringe: `${showNumber(syringe.capacity.value, 1)} mL`,
    agitate: medicineById(formulary, jug.medicineId)?.agitate.how ?? 'shake',
  };
}

function loggedNow({ round }: Memory): SayScene['logged'] {
  if (round.phase.step !== 'logged') return null;
  const { id, offer, outcome, milk, meat, clockTrusted } = round.phase.treatment;
  const { name, inMilk } = offer.animal;
  return { id, name, outcome, inMilk, milk, meat, provisional: !clockTrusted };
}

function correctionNow({ recent }: Memory): SayScene['correction'] {
  let newest: SayScene['correction'] = null;
  for (const { atMs, what } of recent.flatMap(({ corrections }) => corrections)) {
    if (newest === null || atMs >= newest.atMs) newest = { atMs, kind: what.kind };
  }
  return newest;
}

function powderNow({ mixing }: Memory): SayScene['powder'] {
  if (mixing.step === 'powder') return mixing.verdict;
  // Seen whole it is taken at once, and the screen goes on.
  return mixing.step === 'dissolve' ? 'whole' : null;
}
