import type { RegimenInForce } from '../medicine/in-force.ts';
import type { Jug } from '../mixing/jug.ts';
import { rateDelivered } from '../quantity/strength.ts';
import type { Held } from '../weighing/settle.ts';
import { type Dose, doseFor } from './dose.ts';
import { type Interval, quotientInterval } from './interval.ts';
import type { Syringe } from './syringe.ts';

/** An animal of a group, and what it is thought to weigh. */
export interface GroupMember {
  readonly id: string;
  readonly weight: Held;
}

/** What one member gets from the dose of its group, in mg/kg at k = 2. */
export type Gets = Interval & { readonly value: number };

/** One dose for a group, or why there is none. */
export type GroupDose =
  | {
      readonly kind: 'dose';
      readonly dose: Dose;
      /** Whoever set the dose. */
      readonly heaviest: GroupMember;
      readonly lightest: GroupMember;
      readonly lightestGets: Gets;
    }
  | { readonly kind: 'nobody' }
  | { readonly kind: 'no-syringe'; readonly heaviest: GroupMember }
  | {
      readonly kind: 'past-ceiling';
      readonly heaviest: GroupMember;
      /** Everybody the dose of the heaviest might take past the ceiling, lightest first: split them off, or weigh. */
      readonly past: readonly GroupMember[];
    };

/** What a group is dosed with. */
export interface GroupMeans {
  readonly regimen: RegimenInForce;
  readonly jug: Jug;
  readonly syringes: readonly Syringe[];
}

/**
 * One dose for animals that cannot be weighed one by one.
 *
 * The heaviest sets the dose, since too little breeds resistant worms (Texas A&M L-5092, 1998, read in a copy); the group
 * is refused where the upper end of what any member gets, its weight's doubt included, would pass the ceiling.
 */
export function groupDose(members: readonly GroupMember[], means: GroupMeans): GroupDose {
  const sorted = lightestFirst(members);
  const [lightest, heaviest] = [sorted[0], sorted[sorted.length - 1]];
  if (lightest === undefined || heaviest === undefined) return { kind: 'nobody' };
  const dose = doseFor(heaviest.weight, means.regimen, means.jug, means.syringes);
  if (dose === null) return { kind: 'no-syringe', heaviest };
  const ceiling = means.regimen.ceiling.value;
  const past = sorted.filter((member) => getsOf(member, dose, means.jug).high > ceiling);
  if (past.length > 0) return { kind: 'past-ceiling', heaviest, past };
  return { kind: 'dose', dose, heaviest, lightest, lightestGets: getsOf(lightest, dose, means.jug) };
}

/** A part of a herd that one dose fits. */
export interface FittingGroup {
  /** Heaviest first. */
  readonly members: readonly GroupMember[];
  readonly dose: Extract<GroupDose, { kind: 'dose' }>;
}

/**
 * Splits a herd into groups that one dose fits, heaviest first, and those that no group takes.
 *
 * Each group reaches as far down as its heaviest allows, so there are no fewer groups than these. Left over is whoever
 * no syringe measures for, or whose weight is too doubtful for a dose of its own: weigh it.
 */
export function splitGroups(
  members: readonly GroupMember[],
  means: GroupMeans,
): { readonly groups: readonly FittingGroup[]; readonly left: readonly GroupMember[] } {
  const groups: FittingGroup[] = [];
  const left: GroupMember[] = [];
  let waiting = lightestFirst(members).reverse();
  while (waiting.length > 0) {
    const [heaviest, ...others] = waiting;
    if (heaviest === undefined) break;
    const own = groupDose([heaviest], means);
    if (own.kind !== 'dose') {
      left.push(heaviest);
      waiting = others;
      continue;
    }
    const fits = (member: GroupMember): boolean =>
      getsOf(member, own.dose, means.jug).high <= means.regimen.ceiling.value;
    const group = [heaviest, ...others.filter(fits)];
    const dose = groupDose(group, means);
    if (dose.kind === 'dose') groups.push({ members: group, dose });
    waiting = others.filter((member) => !fits(member));
  }
  return { groups, left };
}

/** What a member gets from the dose of its group. */
export function getsOf({ weight }: GroupMember, { plan }: Dose, jug: Jug): Gets {
  const value = rateDelivered(plan.total, jug.strength, weight.mass).value;
  const doubt = weight.uncertainty.value / weight.mass.value;
  return { value, ...quotientInterval(value, Math.hypot(jug.relative, plan.relative), doubt) };
}

function lightestFirst(members: readonly GroupMember[]): GroupMember[] {
  return [...members].sort((a, b) => a.weight.mass.value - b.weight.mass.value);
}
