import type { CheckPoint, ScaleCheckRecord } from '../../core/checking/check-record.ts';
import { KNOWN_WEIGHTS, type KnownWeight } from '../../core/checking/known-weight.ts';
import { isTooLight } from '../../core/checking/scale-check.ts';
import type { Underway } from '../../core/checking/scale-check-state.ts';
import { checkStanding } from '../../core/checking/standing.ts';
import { isWithin } from '../../core/checking/verdict.ts';
import type { Mass } from '../../core/quantity/mass.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { ScaleRole } from '../../core/weighing/reading.ts';
import type {
  CheckPointView,
  CheckView,
  ScaleChecksView,
  ScaleCheckView,
  WeightView,
} from '../../shared/check.ts';
import type { Clock } from '../barn/clock.ts';
import { checkingOf, type Memory } from '../barn/memory.ts';
import { rfc3339 } from './times.ts';

function weightView({ id, amount, unit }: KnownWeight): WeightView {
  return { id, amount, unit };
}

function pointView(point: CheckPoint): CheckPointView {
  return {
    spot: point.spot,
    knownGrams: point.known.value,
    shownGrams: point.shown.value,
    error: point.error,
    limit: point.limit,
    within: isWithin(point),
  };
}

/** A finished check of a scale as the wire carries it. */
export function scaleCheckView(record: ScaleCheckRecord): ScaleCheckView {
  const { corners, second } = record;
  return {
    id: record.id,
    role: record.role,
    at: rfc3339(record.atMs),
    provisional: !record.clockTrusted,
    by: record.by,
    divisionGrams: record.division.value,
    weight: weightView(record.weight),
    second: second === null ? null : weightView(second),
    points: record.points.map(pointView),
    corners: corners === null ? null : { ...corners, within: corners.spread <= corners.limit + 1e-9 },
    rough: record.rough,
    verdict: record.verdict,
  };
}

/** How the checks of a scale stand, as the wire carries it. */
export function scaleChecksView(memory: Memory, role: ScaleRole, clock: Clock): ScaleChecksView {
  const last = memory.scaleChecks[role];
  return {
    last: last === null ? null : scaleCheckView(last),
    standing: checkStanding(checkingOf(memory, role), clock.now().wallMs, clock.isTrusted()),
  };
}

function choices(role: ScaleRole, division: Mass, bottleToo: boolean) {
  return KNOWN_WEIGHTS[role]
    .filter((weight) => bottleToo || weight.unit !== 'L')
    .map((weight) => ({ ...weightView(weight), tooLight: isTooLight(weight, division) }));
}

/** The check of a scale under way, as the wire carries it, with what the scale shows now. */
export function checkView(memory: Memory): CheckView {
  const { check } = memory;
  const weighing = (role: ScaleRole) => {
    const scale = role === 'platform' ? memory.deadWeight : memory.bench;
    const current = scale.net ? null : scale.live;
    return { role, liveGrams: current?.value ?? null, steady: current !== null && scale.steady !== null };
  };
  const running = (run: Underway) => ({ ...weighing(run.role), weight: weightView(run.weight) });
  switch (check.step) {
    case 'idle':
      return { step: 'idle' };
    case 'zero':
      return { step: 'zero', ...weighing(check.role), restarted: check.restarted };
    case 'weight':
      return { step: 'weight', role: check.role, choices: choices(check.role, check.division, true) };
    case 'second': {
      const { role, division } = check.run;
      return { step: 'second', role, choices: choices(role, division, false) };
    }
    case 'bottle':
    case 'middle':
    case 'off':
      return { step: check.step, ...running(check.run) };
    case 'corner':
      return { step: 'corner', ...running(check.run), corner: check.corner };
    case 'both':
    case 'down':
      return { step: check.step, ...running(check.run), second: weightView(check.second) };
    case 'result':
      return { step: 'result', record: scaleCheckView(check.record) };
    default:
      return unreachable(check);
  }
}
