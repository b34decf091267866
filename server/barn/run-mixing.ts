import { reduceMixing } from '../../core/jug/reduce.ts';
import type { MixingEvent, MixingRefusal } from '../../core/jug/state.ts';
import type { BarnContext } from './barn-context.ts';
import { runRound } from './run-round.ts';

/** Takes the mixing one event further and carries out what that asks for. Throws when the disk refuses. */
export function runMixing(barn: BarnContext, event: MixingEvent): MixingRefusal | null {
  const { memory, clock, store } = barn;
  const outcome = reduceMixing(memory.mixing, event, {
    formulary: memory.formulary,
    now: clock.now(),
    clockTrusted: clock.isTrusted(),
    by: memory.settings.person,
    bench: memory.bench,
    benchReady: barn.linkOf('bench') === 'ready',
    freshId: barn.newId(),
    nextNumber: 1 + Math.max(0, ...memory.jugs.map((jug) => jug.number)),
  });
  barn.memory = { ...memory, mixing: outcome.mixing };
  for (const { jug } of outcome.effects) {
    const whole = { ...jug, mixedAtMs: Math.round(jug.mixedAtMs), useByMs: Math.round(jug.useByMs) };
    store.jugs.add(whole);
    clock.sawRecordAt(whole.mixedAtMs);
    barn.memory = { ...barn.memory, jugs: [whole, ...barn.memory.jugs] };
    runMixing(barn, { type: 'stored' });
    runRound(barn, { type: 'world-changed', what: 'jugs' });
  }
  return outcome.refused;
}
