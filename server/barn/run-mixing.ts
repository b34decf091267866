import { reduceMixing } from '../../core/jug/reduce.ts';
import type { MixingEffect, MixingEvent, MixingRefusal } from '../../core/jug/state.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import type { Vessel } from '../../core/mixing/vessel.ts';
import type { BarnContext } from './barn-context.ts';
import { syringesOnHand } from './memory.ts';
import { runRound } from './run-round.ts';
import { takeFromStock } from './stock-intents.ts';

/** Takes the mixing one event further and carries out what that asks for. Throws when the disk refuses. */
export function runMixing(barn: BarnContext, event: MixingEvent): MixingRefusal | null {
  const { memory, clock } = barn;
  const outcome = reduceMixing(memory.mixing, event, {
    formulary: memory.formulary,
    now: clock.now(),
    clockTrusted: clock.isTrusted(),
    by: memory.settings.person,
    bench: memory.bench,
    benchReady: barn.linkOf('bench') === 'ready',
    approvals: memory.approvals,
    animals: memory.animals,
    syringes: syringesOnHand(memory),
    vessels: memory.vessels,
    jugs: memory.jugs,
    stock: memory.stock,
    freshId: barn.newId(),
    nextNumber: 1 + Math.max(0, ...memory.jugs.map((jug) => jug.number)),
  });
  barn.memory = { ...memory, mixing: outcome.mixing };
  for (const effect of outcome.effects) carryOut(barn, effect);
  return outcome.refused;
}

function carryOut(barn: BarnContext, effect: MixingEffect): void {
  if (effect.do === 'learn-vessel') learnVessel(barn, effect.vessel);
  else if (effect.do === 'take-stock') takeFromStock(barn, effect.lotId, effect.pieces, null);
  else storeJug(barn, effect.jug);
}

function learnVessel(barn: BarnContext, vessel: Vessel): void {
  const learned = { ...vessel, learnedAtMs: Math.round(vessel.learnedAtMs) };
  barn.store.vessels.learn(learned);
  const { vessels } = barn.memory;
  const others = vessels.map((each) =>
    each.letter === learned.letter && each.retiredAtMs === null
      ? { ...each, retiredAtMs: learned.learnedAtMs }
      : each,
  );
  barn.memory = { ...barn.memory, vessels: [...others, learned] };
}

/** Puts a jug in service. What was in the same jug before is there no more: it stood on the bench empty since. */
function storeJug(barn: BarnContext, jug: Jug): void {
  const { store, clock } = barn;
  const whole = { ...jug, mixedAtMs: Math.round(jug.mixedAtMs), useByMs: Math.round(jug.useByMs) };
  store.jugs.add(whole, clock.now().board);
  if (whole.stock !== null) takeFromStock(barn, whole.stock.lotId, whole.stock.pieces, whole.id);
  if (whole.clockTrusted) clock.sawRecordAt(whole.mixedAtMs);
  for (const { id, discardedAtMs, weighed } of barn.memory.jugs) {
    const gone = discardedAtMs === null && weighed !== null && weighed.letter === whole.weighed?.letter;
    if (gone) store.jugs.discard(id, whole.mixedAtMs);
  }
  barn.memory = { ...barn.memory, jugs: store.jugs.atHand() };
  runMixing(barn, { type: 'stored' });
  runRound(barn, { type: 'world-changed', what: 'jugs' });
}
