import type { CautionCode } from '../../core/dosing/cautions.ts';

/** What can put right the reason of a stop; where nothing at the kiosk can, the animal is skipped. */
export type StopRemedy = 'approve' | 'syringes' | 'answer' | 'other-jug' | 'check-scale' | 'skip';

/** The way on from a stop, by its code. */
export function remedyOf(code: CautionCode): StopRemedy {
  switch (code) {
    case 'not-approved':
      return 'approve';
    case 'no-syringe':
      return 'syringes';
    case 'unanswered-offer':
      return 'answer';
    case 'scale-check-failed':
      return 'check-scale';
    case 'jug-past-use-by':
    case 'jug-empty':
    case 'jug-too-little':
    case 'species-not-covered':
    case 'presentation-not-covered':
      return 'other-jug';
    default:
      return 'skip';
  }
}
