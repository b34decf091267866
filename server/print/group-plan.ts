import type { CautionCode } from '../../core/dosing/cautions.ts';
import { decideDose } from '../../core/dosing/decide.ts';
import { type FittingGroup, type GroupMember, splitGroups } from '../../core/dosing/group-dose.ts';
import type { Animal, Species } from '../../core/herd/animal.ts';
import type { RegimenInForce } from '../../core/medicine/in-force.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import { DAY_MS } from '../../core/moment.ts';
import { grams } from '../../core/quantity/mass.ts';
import type { RoundWorld } from '../../core/round/state.ts';

/** A weight from the day book older than this is no weight to dose by (our own guard). */
export const OLDEST_WEIGHT_DAYS = 30;
/** Standard uncertainty of a weight of the last weeks, as a share of it: gut fill and growth (our own guard). */
const DOUBT = 0.05;

/** Why an animal is in no group. */
export type LeftOut =
  | { readonly why: 'left-out' | 'never-weighed' | 'weight-too-old' | 'no-dose' }
  | { readonly why: 'stop'; readonly code: CautionCode };

/** A species of the herd in groups that one dose each fits, from the weights in the day book. */
export interface GroupPlan {
  readonly species: Species;
  readonly regimen: RegimenInForce;
  readonly groups: readonly FittingGroup[];
  /** What must be asked of an animal in a group before it is dosed. */
  readonly asks: ReadonlyMap<string, readonly CautionCode[]>;
  readonly out: readonly { readonly animal: Animal; readonly reason: LeftOut }[];
}

/**
 * Puts the herd into groups for one jug, species by species, as far as its rules are approved.
 *
 * Every animal is judged as at the platform: one with a stop is in no group, and no stop can be got round this way.
 */
export function groupPlans(
  jug: Jug,
  without: readonly string[],
  unanswered: readonly string[],
  world: RoundWorld,
): GroupPlan[] {
  const species = [...new Set(world.animals.map((animal) => animal.species))];
  return species.flatMap((each) => {
    const members: GroupMember[] = [];
    const asks = new Map<string, CautionCode[]>();
    const out: { animal: Animal; reason: LeftOut }[] = [];
    let regimen: RegimenInForce | null = null;
    for (const animal of world.animals.filter((one) => one.species === each)) {
      const weight = weightOf(animal, world);
      if (typeof weight === 'string') {
        out.push({ animal, reason: { why: weight } });
        continue;
      }
      const doubts = { unanswered: unanswered.includes(animal.id), namedLate: false };
      const decision = decideDose(animal, weight, jug, doubts, world);
      if (decision.approval !== null) regimen ??= decision.regimen;
      const stop = decision.cautions.find(({ strength }) => strength === 'stop');
      if (without.includes(animal.id)) out.push({ animal, reason: { why: 'left-out' } });
      else if (stop !== undefined) out.push({ animal, reason: { why: 'stop', code: stop.code } });
      else {
        members.push({ id: animal.id, weight });
        asks.set(
          animal.id,
          decision.cautions.filter(({ strength }) => strength === 'ask').map(({ code }) => code),
        );
      }
    }
    if (regimen === null) return [];
    const { groups, left } = splitGroups(members, { regimen, jug, syringes: world.syringes });
    for (const { id } of left) {
      const animal = world.animals.find((one) => one.id === id);
      if (animal !== undefined) out.push({ animal, reason: { why: 'no-dose' } });
    }
    return [{ species: each, regimen, groups, asks, out }];
  });
}

function weightOf(
  { lastWeight }: Animal,
  { now }: RoundWorld,
): GroupMember['weight'] | 'never-weighed' | 'weight-too-old' {
  if (lastWeight === null) return 'never-weighed';
  if (now.wallMs - lastWeight.atMs > OLDEST_WEIGHT_DAYS * DAY_MS) return 'weight-too-old';
  const { mass } = lastWeight;
  return { mass, uncertainty: grams(DOUBT * mass.value), at: now.uptimeMs, changedFrom: null };
}
