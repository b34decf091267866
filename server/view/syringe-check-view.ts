import type { SyringeCheckRecord, SyringeTask } from '../../core/checking/syringe-check-state.ts';
import { DELIVERIES } from '../../core/checking/syringe-findings.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { SyringeCheckRecordView, SyringeCheckView } from '../../shared/syringe-check.ts';
import type { Memory } from '../barn/memory.ts';
import { rfc3339 } from './times.ts';

function recordView(record: SyringeCheckRecord): SyringeCheckRecordView {
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

/** The last check of a syringe as the wire carries it; `null` where there was none. */
export function syringeCheckRecordView(record: SyringeCheckRecord | null): SyringeCheckRecordView | null {
  return record === null ? null : recordView(record);
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
      return { step: 'result', record: recordView(check.record) };
    default:
      return unreachable(check);
  }
}
