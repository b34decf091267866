import { fromSteps, stepsIn } from '../../core/quantity/round.ts';

/** One mark on a barrel: where it stands, how long its line is, and its numeral if it has one. */
export interface SyringeMark {
  /** Along the barrel, 0 at the nozzle end, 1 at full capacity. */
  readonly at: number;
  readonly ml: number;
  readonly length: 'short' | 'middle' | 'long';
  readonly numeral: string | null;
}

/** Numerals a barrel is wide enough for. */
const MOST_NUMERALS = 4;

/** Where a volume stands along the barrel, as a share of the capacity; 0 to 1 (both included). */
export function shareOfBarrel(ml: number, capacityMl: number): number {
  return Math.min(1, Math.max(0, ml / capacityMl));
}

/** The step between two numerals: 1, 2 or 5 times a power of ten, a whole number of marks, few enough to read. */
export function numeralStep(capacityMl: number, graduationMl: number): number {
  for (let power = 10 ** -2; power <= 10 ** 3; power *= 10) {
    for (const factor of [1, 2, 5]) {
      const step = Number((factor * power).toPrecision(3));
      const marks = step / graduationMl;
      if (Math.abs(marks - Math.round(marks)) > 1e-6 || marks < 1) continue;
      if (capacityMl / step <= MOST_NUMERALS) return step;
    }
  }
  return capacityMl;
}

/** Every mark of a barrel from zero to its capacity, as a syringe of that capacity and graduation carries them. */
export function syringeMarks(capacityMl: number, graduationMl: number): SyringeMark[] {
  const count = stepsIn(capacityMl, graduationMl, 'down');
  const every = Math.round(numeralStep(capacityMl, graduationMl) / graduationMl);
  const half = every % 2 === 0 ? every / 2 : every;
  return Array.from({ length: count + 1 }, (_, steps) => {
    const ml = fromSteps(steps, graduationMl);
    const numbered = steps % every === 0;
    return {
      at: shareOfBarrel(ml, capacityMl),
      ml,
      length: numbered ? 'long' : steps % half === 0 ? 'middle' : 'short',
      numeral: numbered ? String(Number(ml.toFixed(2))) : null,
    };
  });
}
