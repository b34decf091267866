import { reduceSyringeCheck } from '../../core/checking/syringe-check.ts';
import type { SyringeCheckEvent, SyringeCheckRefusal } from '../../core/checking/syringe-check-state.ts';
import type { BarnContext } from './barn-context.ts';
import { runRound } from './run-round.ts';

/** Takes the check of a syringe one event further and carries out what that asks for. Throws when the disk refuses. */
export function runSyringeCheck(barn: BarnContext, event: SyringeCheckEvent): SyringeCheckRefusal | null {
  const { memory, clock } = barn;
  const outcome = reduceSyringeCheck(memory.syringeCheck, event, {
    now: clock.now(),
    clockTrusted: clock.isTrusted(),
    by: memory.settings.person,
    bench: memory.bench,
    benchReady: barn.linkOf('bench') === 'ready',
    freshId: barn.newId(),
  });
  barn.memory = { ...memory, syringeCheck: outcome.check };
  for (const { record } of outcome.effects) {
    const whole = { ...record, atMs: Math.round(record.atMs) };
    barn.store.syringeChecks.add(whole);
    if (whole.clockTrusted) clock.sawRecordAt(whole.atMs);
    const others = barn.memory.syringeChecks.filter(({ syringeId }) => syringeId !== whole.syringeId);
    barn.memory = { ...barn.memory, syringeChecks: [...others, whole] };
    runRound(barn, { type: 'world-changed', what: 'syringes' });
  }
  return outcome.refused;
}

/** Takes back the last check of a syringe, in the name of the person working. Throws when the disk refuses. */
export function forgetSyringeCheck(barn: BarnContext, syringeId: string): 'not-checked' | null {
  const { memory, clock, store } = barn;
  const check = memory.syringeChecks.find((each) => each.syringeId === syringeId);
  if (check === undefined) return 'not-checked';
  store.syringeChecks.forget(check.id, { atMs: Math.round(clock.now().wallMs), by: memory.settings.person });
  barn.memory = { ...memory, syringeChecks: memory.syringeChecks.filter((each) => each !== check) };
  runRound(barn, { type: 'world-changed', what: 'syringes' });
  return null;
}
