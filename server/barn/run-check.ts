import { reduceScaleCheck } from '../../core/checking/scale-check.ts';
import {
  type ScaleCheckEvent,
  type ScaleCheckRefusal,
  scaleInCheck,
} from '../../core/checking/scale-check-state.ts';
import { BLANK_BENCH } from '../../core/weighing/bench.ts';
import { BLANK_DECK } from '../../core/weighing/deck.ts';
import type { BarnContext } from './barn-context.ts';
import { runRound } from './run-round.ts';

/** Takes the check of a scale one event further and carries out what that asks for. Throws when the disk refuses. */
export function runScaleCheck(barn: BarnContext, event: ScaleCheckEvent): ScaleCheckRefusal | null {
  const { memory, clock } = barn;
  const before = scaleInCheck(memory.check);
  const role = before ?? (event.type === 'start' ? event.role : 'platform');
  const outcome = reduceScaleCheck(memory.check, event, {
    now: clock.now(),
    clockTrusted: clock.isTrusted(),
    by: memory.settings.person,
    scale: role === 'platform' ? memory.deadWeight : memory.bench,
    scaleReady: barn.linkOf(role) === 'ready',
    freshId: barn.newId(),
  });
  barn.memory = { ...memory, check: outcome.check };
  if (before !== 'platform' && scaleInCheck(outcome.check) === 'platform') takePlatform(barn);
  for (const { record } of outcome.effects) {
    const whole = { ...record, atMs: Math.round(record.atMs) };
    barn.store.scaleChecks.add(whole);
    if (whole.clockTrusted) clock.sawRecordAt(whole.atMs);
    const scaleChecks = { ...barn.memory.scaleChecks, [whole.role]: whole };
    barn.memory = { ...barn.memory, scaleChecks };
    if (whole.role === 'platform') tellRound(barn, whole.verdict);
  }
  return outcome.refused;
}

/** A weight is no animal: while it is checked, the platform is blank to the round, and its readings go to the check. */
function takePlatform(barn: BarnContext): void {
  barn.memory = { ...barn.memory, deck: BLANK_DECK, deadWeight: BLANK_BENCH };
  runRound(barn, { type: 'platform-blank' });
}

/** A dose on offer rests on a weight of this scale: it stands on after a pass, and is judged anew after a failure. */
function tellRound(barn: BarnContext, verdict: 'passed' | 'failed'): void {
  const held = verdict === 'passed' && barn.memory.round.phase.step === 'offered';
  if (!held) runRound(barn, { type: 'world-changed', what: 'rules' });
}
