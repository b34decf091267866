import type { Animal } from '../../core/herd/animal.ts';
import type { HerdAnimal } from '../../core/herd/herd-animal.ts';
import { isInHand } from '../../core/round/group-given.ts';
import type { GroupsView, GroupView, OutOfGroupView } from '../../shared/group.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { roundWorld } from '../barn/run-round.ts';
import { type GroupPlan, groupPlans } from '../print/group-plan.ts';
import { cautionView } from './dose-view.ts';
import { rfc3339 } from './times.ts';

/** Which animals are to be dosed as groups, and which of them are left out. */
export interface GroupChoice {
  readonly of: (animal: HerdAnimal) => boolean;
  readonly without: readonly string[];
}

/** The animals chosen in groups that one dose of a jug each fits, as the wire carries it; `null` where there is no such jug. */
export function groupsView(
  barn: BarnContext,
  jugId: string,
  { of, without }: GroupChoice,
): GroupsView | null {
  const { memory } = barn;
  const jug = memory.jugs.find(({ id }) => id === jugId);
  if (jug === undefined) return null;
  const world = roundWorld(barn);
  const chosen = new Set(memory.animals.filter(of).map(({ id }) => id));
  const animals = world.animals.filter(({ id }) => chosen.has(id));
  const unanswered = memory.round.unanswered.map(({ animal }) => animal.id);
  const plans = groupPlans(jug, without, unanswered, { ...world, animals });
  return {
    inHand: isInHand(memory.round, jugId),
    groups: plans.flatMap((plan) => plan.groups.map((group) => groupView(plan, group, animals))),
    out: plans.flatMap((plan) => plan.out.map(outView)),
  };
}

function groupView(
  { species, regimen, asks }: GroupPlan,
  { members, dose: { dose, heaviest, lightest, lightestGets } }: GroupPlan['groups'][number],
  animals: readonly Animal[],
): GroupView {
  const { plan } = dose;
  const weighed = (id: string) => {
    const animal = animals.find((each) => each.id === id);
    const { mass, atMs } = animal?.lastWeight ?? { mass: { value: 0 }, atMs: 0 };
    return { animal: id, name: animal?.name ?? id, grams: mass.value, weighedAt: rfc3339(atMs) };
  };
  return {
    species,
    volumeMl: plan.total.value,
    syringeName: plan.syringe.name,
    syringeCapacityMl: plan.syringe.capacity.value,
    syringeGraduationMl: plan.syringe.graduation.value,
    marksMl: plan.draws.map(({ value }) => value),
    targetMgPerKg: regimen.target.value,
    ceilingMgPerKg: regimen.ceiling.value,
    heaviest: weighed(heaviest.id),
    lightest: { ...weighed(lightest.id), gets: lightestGets },
    members: members.map(({ id }) => ({ ...weighed(id), asks: (asks.get(id) ?? []).map(cautionView) })),
  };
}

function outView({ animal, reason }: GroupPlan['out'][number]): OutOfGroupView {
  return {
    animal: animal.id,
    name: animal.name,
    why: reason.why,
    caution: reason.why === 'stop' ? cautionView(reason.caution) : null,
  };
}
