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
      const { step, role, path, choices, linesBaud } = stage;
      return { step, role, path, proposals: choices.map(choiceView), lines: linesBaud !== null };
    }
    case 'lines': {
      const { step, role, path, baud, opened } = stage;
      const status = opened?.link.state.status ?? 'opening';
      return {
        step,
        role,
        path,
        baud,
        link: status === 'absent' ? 'opening' : status,
        lines: differentLines(opened?.lines ?? []),
        guesses: opened?.guesses.length ?? 0,
      };
    }
    case 'trial':
      return trialView(stage);
    default:
      return unreachable(stage);
  }
}

function trialView(stage: TrialStage): SetupView {
  const { step, role, path, choices, linesBaud, index, opened, proof, told, countsIn } = stage;
  const status = opened?.link.state.status ?? 'opening';
  const trial = opened?.trial;
  return {
    step,
    role,
    path,
    proposals: choices.map(choiceView),
    lines: linesBaud !== null,
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

/** How many lines are shown. */
const SHOWN_LINES = 4;

/** The newest lines, each that equals its neighbour once, the newest at the end. */
function differentLines(lines: readonly string[]): string[] {
  return lines.filter((line, at) => line !== lines[at + 1]).slice(-SHOWN_LINES);
}
