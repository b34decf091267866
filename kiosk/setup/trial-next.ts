import { grams, type MassUnit, massIn } from '../../core/quantity/mass.ts';
import { showNumber } from '../../core/quantity/show.ts';
import type { SetupView } from '../../shared/setup.ts';

/** A device on trial. */
export type TrialView = Extract<SetupView, { step: 'trial' }>;

/** The one thing to do next with a device on trial. */
export type TrialNext = 'wait' | 'prove' | 'instead' | 'no-tare' | 'steps' | 'other-format' | 'keep';

/** What to offer as the biggest plate; a scale is kept right away only once a known weight has proved it. */
export function nextOf(trial: TrialView): TrialNext {
  const { role, link, live, proof, facts, needs } = trial;
  if (role === 'wand') return link === 'ready' && !needs.proof ? 'keep' : 'wait';
  if (link !== 'ready' || live === null) return 'wait';
  if (needs.otherFormat) return 'other-format';
  if (proof !== null && proof.instead !== null) return 'instead';
  if (proof?.verdict !== 'right') return 'prove';
  if (needs.noTare) return 'no-tare';
  return facts?.divisionGrams === null ? 'steps' : 'keep';
}

/** Whether a scale may be kept without a known weight, where its line names its unit and no manual contradicts it. */
export function keepsUnproved(trial: TrialView): boolean {
  return nextOf(trial) === 'prove' && !trial.needs.proof && !trial.needs.noTare;
}

/** A step or a capacity in the unit a scale shows, with just the decimals it needs. */
export function stepShown(value: number, unit: MassUnit): string {
  return `${showNumber(massIn(grams(value), unit), 3)} ${unit}`;
}

/** How well a format explains what was heard. */
export function fitOf(confidence: number): 'well' | 'partly' | 'little' {
  return confidence >= 0.6 ? 'well' : confidence >= 0.35 ? 'partly' : 'little';
}

/** A port's name without what all of them have in common. */
export function shortPort(path: string): string {
  const name = path.split('/').at(-1) ?? path;
  return name
    .replace(/^usb-/, '')
    .replace(/(?:-if\d+)?(?:-port\d+)?$/, '')
    .replaceAll('_', ' ');
}
