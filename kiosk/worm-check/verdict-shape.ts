import type { VerdictView } from '../../shared/reduction-test.ts';

const SHAPES = {
  resistant: 'bad',
  'low-resistant': 'bad',
  susceptible: 'good',
  inconclusive: 'unclear',
} as const;

/** The outline a verdict is told by, so that it is told apart without colour. */
export function shapeOfVerdict(verdict: VerdictView): 'good' | 'bad' | 'unclear' {
  return SHAPES[verdict];
}
