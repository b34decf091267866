/**
 * How far the volume a syringe delivers may lie from its graduation: ISO 7886-1, tolerance on graduated
 * capacity, in millilitres either way.
 *
 * Below half the nominal capacity: 1.5 % of the nominal plus a part of the volume expelled (2 % for
 * syringes under 5 mL, 1 % from 5 mL up). At half and above: 5 % of the volume expelled under 5 mL nominal,
 * 4 % from 5 mL up. The rule was read for 1 mL and 10 mL syringes (a test laboratory's worked examples);
 * the other sizes are from memory of Table 1 and agree with those two. All limits below are computed.
 */
export interface ToleranceCase {
  readonly nominalMl: number;
  readonly drawnMl: number;
  readonly plusMinusMl: number;
}

function at(nominalMl: number, drawnMl: number, plusMinusMl: number): ToleranceCase {
  return { nominalMl, drawnMl, plusMinusMl };
}

export const TOLERANCE_CASES: readonly ToleranceCase[] = [
  at(1, 0.2, 0.019),
  at(1, 0.5, 0.025),
  at(3, 1, 0.065),
  at(3, 2, 0.1),
  at(6, 2, 0.11),
  at(6, 4, 0.16),
  at(10, 4, 0.19),
  at(10, 8, 0.32),
  at(12, 5, 0.23),
  at(20, 5, 0.35),
  at(20, 15, 0.6),
  at(35, 10, 0.625),
  at(35, 30, 1.2),
  at(60, 20, 1.1),
  at(60, 50, 2),
];

/** USP <1>: "syringe of rated capacity not exceeding three times the volume to be measured". */
export const LARGEST_CAPACITY_OVER_VOLUME = 3;
