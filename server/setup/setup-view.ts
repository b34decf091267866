import { NO_STEPS } from '../../core/proving/steps.ts';
import { restOf } from '../../core/proving/trial.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { SetupView } from '../../shared/setup.ts';
import type { Devices } from '../devices/devices.ts';
import { choiceView } from './choice.ts';
import { factsView } from './facts.ts';
import { needsOf } from './prove.ts';
import type { Stage, TrialStage } from './stage.ts';

/** A set-up as the wire carries it. */
export function setupView(stage: Stage, devices: Devices | null): SetupView {
  switch (stage.step) {
    case 'idle':
    case 'listening':
    case 'failed':
      return stage;
    case 'ports':
      return {
        step: 'ports',
        ports: stage.watch.ports.map(({ path, device, fresh }) => ({
          path,
          device,
          fresh,
          usedBy: devices?.holderOf(path) ?? null,
        })),
      };
    case 'proposals': {
      const { step, role, path, choices } = stage;
      return { step, role, path, proposals: choices.map(choiceView) };
    }
    case 'trial':
      return trialView(stage);
    default:
      return unreachable(stage);
  }
}

function trialView(stage: TrialStage): SetupView {
  const { step, role, path, choices, index, opened, proof, told, countsIn } = stage;
  const status = opened?.link.state.status ?? 'opening';
  const trial = opened?.trial;
  return {
    step,
    role,
    path,
    proposals: choices.map(choiceView),
    index,
    link: status === 'absent' ? 'opening' : status,
    live: trial?.live?.value ?? null,
    division: trial?.division?.value ?? null,
    still: trial === undefined ? false : restOf(trial).still,
    net: trial?.net ?? false,
    tag: opened?.tag ?? null,
    garbled: opened?.garbled ?? false,
    proof,
    facts: role === 'wand' ? null : factsView(told, opened?.steps ?? NO_STEPS, countsIn),
    needs: needsOf(stage),
  };
}
