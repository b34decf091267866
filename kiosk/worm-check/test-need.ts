import { FEWEST_EGGS_AN_ANIMAL, testSize } from '../../core/reduction/plan.ts';
import { factorOf } from '../../core/worms/counting-methods.ts';
import type { SampleMethodView } from '../../shared/egg-count.ts';
import type { PlanView } from '../../shared/reduction-test.ts';

/** How many animals a test wants, and what that rests on. */
export interface TestNeed {
  readonly kind: 'sample' | 'count-finer' | 'no-table';
  /** `null` where no number is told. */
  readonly animals: number | null;
  /** Raw eggs all of them should show together before treatment. */
  readonly eggs: number | null;
  /** Raw eggs expected of each. */
  readonly each: number;
  /** Whether `each` is assumed, since nobody counted them lately. */
  readonly assumed: boolean;
}

/** What a test of these needs, counted by a method. Without a count the fewest eggs of the table are assumed. */
export function needFor(
  { species, expectedEggsPerGram }: Pick<PlanView['rounds'][number], 'species' | 'expectedEggsPerGram'>,
  method: SampleMethodView,
): TestNeed {
  const assumed = expectedEggsPerGram === null;
  const each = assumed ? FEWEST_EGGS_AN_ANIMAL : expectedEggsPerGram / factorOf(method);
  if (species === 'cattle') return { kind: 'no-table', animals: null, eggs: null, each, assumed };
  const size = testSize(species, 'clinical', each);
  if (size.kind === 'count-finer') return { kind: 'count-finer', animals: null, eggs: null, each, assumed };
  return { kind: 'sample', animals: size.animals, eggs: size.eggs, each, assumed };
}
