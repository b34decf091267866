import type { SyringeCheckRecord, SyringeTask } from '../../core/checking/syringe-check-state.ts';
import { DELIVERIES } from '../../core/checking/syringe-findings.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { SyringeCheckRecordView, SyringeCheckView } from '../../shared/syringe-check.ts';
import type { Memory } from '../barn/memory.ts';
import { rfc3339 } from './times.ts';

/** A finished check of a syringe as the wire carries it. */
export function syringeCheckRecordView(record: SyringeCheckRecord): SyringeCheckRecordView {
  const { findings } = record;
  return {
    id: record.id,
    syringeId: record.syringeId,
    at: rfc3339(record.atMs),
    provisional: !record.clockTrusted,
    by: record.by,
    markMl: findings.mark.value,
    celsius: record.temperature.value,
    volumesMl: findings.volumes.map(({ value }) => value),
    leftOut: record.leftOut,
    biasMl: findings.bias.value,
    biasUncertaintyMl: findings.biasUncertainty.value,
    spreadMl: findings.spread.value,
    allowedMl: findings.allowed.value,
    verdict: findings.verdict,
  };
}

/** The check of a syringe under way, as the wire carries it, with what the bench shows now. */
export function syringeCheckView({ syringeCheck: check, bench }: Memory): SyringeCheckView {
  const taskView = ({ syringe, mark, temperature }: SyringeTask) => ({
    syringeId: syringe.id,
    markMl: mark.value,
    celsius: temperature.value,
  });
  const steady = bench.steady !== null;
  switch (check.step) {
    case 'idle':
      return { step: 'idle' };
    case 'cup':
      return { step: 'cup', ...taskView(check.task), liveGrams: bench.live?.value ?? null, steady };
    case 'deliver': {
      const current = bench.net === check.net ? bench.live : null;
      return {
        step: 'deliver',
        ...taskView(check.task),
        done: check.delivered.length,
        of: DELIVERIES,
        leftOut: check.leftOut,
        riseGrams: current === null ? null : current.value - check.last.value,
        steady: current !== null && steady,
      };
    }
    case 'result':
      return { step: 'result', record: syringeCheckRecordView(check.record) };
    default:
      return unreachable(check);
  }
}
