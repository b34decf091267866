import type { Advice } from '../../shared/animal.ts';

const SHAPES = { treat: 'bad', 'look-again': 'unclear', leave: 'good' } as const;

/** The outline an advice is told by, so that it is told apart without colour. */
export function shapeOf(advice: Advice): 'good' | 'bad' | 'unclear' {
  return SHAPES[advice];
}
