import { knownLoad } from '../../core/proving/known-load.ts';
import { canProve, proofOf } from '../../core/proving/proof.ts';
import { restOf } from '../../core/proving/trial.ts';
import type { ScaleRole } from '../../core/weighing/reading.ts';
import { scaleProfile } from '../../hardware/scale/profiles.ts';
import type { Refusal } from '../../shared/intent.ts';
import type { NeedsView, ProofView } from '../../shared/setup.ts';
import { type Choice, inUnit, isSameChoice, otherMotion } from './choice.ts';
import type { TrialStage } from './stage.ts';

/** What a known weight says of the scale on trial, with the choices there are then; or why nothing can be said. */
export type Proving =
  | { readonly ok: true; readonly proof: ProofView; readonly choices: readonly Choice[] }
  | { readonly ok: false; readonly why: Refusal };

/** Compares what the scale on trial shows with a known load that stands on it. */
export function prove(stage: TrialStage, role: ScaleRole, loadId: string): Proving {
  const { choice, choices, opened } = stage;
  const load = knownLoad(role, loadId);
  if (load === undefined) return { ok: false, why: 'no-such-weight' };
  const trial = opened?.trial;
  if (opened?.link.state.status !== 'ready' || trial === undefined || trial.live === null) {
    return { ok: false, why: 'scale-not-ready' };
  }
  const { live, division } = trial;
  if (trial.net) return { ok: false, why: 'scale-tared' };
  const rest = restOf(trial);
  if (!rest.still || division === null) return { ok: false, why: 'scale-moving' };
  if (!canProve(load.mass, division)) return { ok: false, why: 'weight-too-light' };
  const shown = { knownGrams: load.mass.value, shownGrams: live.value };
  const proof = proofOf(live, load.mass, division, choice.unit);
  switch (proof.verdict) {
    case 'other-unit': {
      const at = placeOf(inUnit(choice, proof.is), choices);
      return {
        ok: true,
        choices: at.choices,
        proof: { ...shown, verdict: 'other-unit', is: proof.is, instead: at.index },
      };
    }
    case 'wrong':
      return { ok: true, choices, proof: { ...shown, verdict: 'wrong', is: null, instead: null } };
    case 'right': {
      if (!rest.neverStill) {
        return { ok: true, choices, proof: { ...shown, verdict: 'right', is: null, instead: null } };
      }
      const at = placeOf(otherMotion(choice), choices);
      return {
        ok: true,
        choices: at.choices,
        proof: { ...shown, verdict: 'never-still', is: null, instead: at.index },
      };
    }
  }
}

/** The place of a choice in the list, which grows by it where it is not there yet. */
function placeOf(choice: Choice | null, choices: readonly Choice[]) {
  if (choice === null) return { index: null, choices };
  const found = choices.findIndex((each) => isSameChoice(each, choice));
  return found >= 0 ? { index: found, choices } : { index: choices.length, choices: [...choices, choice] };
}

/** What keeping the device on trial takes: a proof where its format or its unit is not sure by itself. */
export function needsOf({ role, choice, opened, proof, neverTared }: TrialStage): NeedsView {
  if (role === 'wand') return { proof: opened?.tag == null, noTare: false, otherFormat: false };
  const profile = scaleProfile(choice.profile);
  const unsure = profile?.needsProof === true || !choice.unitKnown;
  const proved = proof?.verdict === 'right';
  const openNet = role === 'platform' && opened?.netUnknown === true;
  const takesWord = profile?.settings.some(({ name }) => name === 'noTare') ?? false;
  return {
    proof: !proved && (unsure || proof !== null),
    noTare: openNet && takesWord && !neverTared,
    otherFormat: openNet && !takesWord,
  };
}
