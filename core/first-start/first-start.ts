/** What a new kiosk asks, in this order. Each may be passed over and come back to. */
export const FIRST_STEPS = [
  'language',
  'panel',
  'unit',
  'clock',
  'people',
  'platform',
  'bench',
  'wand',
  'syringes',
  'rules',
  'practice',
] as const;
/** One of {@link FIRST_STEPS}. */
export type FirstStep = (typeof FIRST_STEPS)[number];

/** Where the first start of a kiosk stands; `null` once it is over. */
export type FirstStart = FirstStep | null;

/** What a person may do at a step: go on, whether it was answered or not; go back; or end it all. */
export type FirstStartMove = 'next' | 'back' | 'end';

/** How a first start begins. */
export const FIRST_STEP: FirstStep = FIRST_STEPS[0];

/**
 * Where a move leads from the step it was made at, or `'not-there'` where the kiosk stands elsewhere by now: a tap that
 * comes twice moves once. Back from the first step stays.
 */
export function moveOn(now: FirstStart, step: FirstStep, move: FirstStartMove): FirstStart | 'not-there' {
  if (now !== step) return 'not-there';
  const at = FIRST_STEPS.indexOf(step);
  switch (move) {
    case 'next':
      return FIRST_STEPS[at + 1] ?? null;
    case 'back':
      return FIRST_STEPS[Math.max(0, at - 1)] ?? null;
    default:
      return null;
  }
}
