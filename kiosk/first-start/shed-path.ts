import type { FirstStep } from '../../core/first-start/first-start.ts';

/** Which part of Shed a step of the first start is answered at; none for those that are asked by tiles of their own. */
export function shedPathOf(step: FirstStep): readonly string[] {
  switch (step) {
    case 'language':
    case 'unit':
    case 'practice':
      return [];
    case 'clock':
      return ['zone'];
    case 'panel':
    case 'people':
    case 'syringes':
    case 'rules':
      return [step];
    default:
      return ['devices', step];
  }
}
