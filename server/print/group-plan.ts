import type { Caution } from '../../core/dosing/cautions.ts';
import { decideDose } from '../../core/dosing/decide.ts';
import { type FittingGroup, type GroupMember, splitGroups } from '../../core/dosing/group-dose.ts';
import type { Animal, Species } from '../../core/herd/animal.ts';
import type { RegimenInForce } from '../../core/medicine/in-force.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import { groupMember } from '../../core/round/group-weights.ts';
import type { RoundWorld } from '../../core/round/state.ts';

/** Why an animal is in no group. */
export type LeftOut =
  | { readonly why: 'left-out' | 'never-weighed' | 'weight-too-old' | 'no-dose' }
  | { readonly why: 'stop'; readonly caution: Caution };

/** A species of the herd in groups that one dose each fits, from the weights in the day book. */
export interface GroupPlan {
  readonly species: Species;
  readonly regimen: RegimenInForce;
  readonly groups: readonly FittingGroup[];
  /** What must be asked of an animal in a group before it is dosed. */
  readonly asks: ReadonlyMap<string, readonly Caution[]>;
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
    const asks = new Map<string, Caution[]>();
    const out: { animal: Animal; reason: LeftOut }[] = [];
    let regimen: RegimenInForce | null = null;
    for (const animal of world.animals.filter((one) => one.species === each)) {
      const member = groupMember(animal, world.now);
      if (typeof member === 'string') {
        out.push({ animal, reason: { why: member } });
        continue;
      }
      const doubts = { unanswered: unanswered.includes(animal.id), namedLate: false };
      const decision = decideDose(animal, member.weight, jug, doubts, world);
      if (decision.approval !== null) regimen ??= decision.regimen;
      const stop = decision.cautions.find(({ strength }) => strength === 'stop');
      if (without.includes(animal.id)) out.push({ animal, reason: { why: 'left-out' } });
      else if (stop !== undefined) out.push({ animal, reason: { why: 'stop', caution: stop } });
      else {
        members.push(member);
        asks.set(
          animal.id,
          decision.cautions.filter(({ strength }) => strength === 'ask'),
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
