import type { SeasonView } from '../../shared/season.ts';

type Day = Extract<SeasonView['outlook'], { kind: 'ready' }>['days'][number];

/** Height of the larvae's field and of the rain's below it, in units of the drawing; a day is ten units wide. */
export const CURVE = { day: 10, larvae: 100, rain: 34 } as const;
/** Less rain than this a day, in mm, does not fill the rain's field. */
const LEAST_FULL_MM = 10;

/** A day's column: where it begins, how high its rain stands, and whether it is wet enough. */
export interface DayColumn {
  readonly on: string;
  readonly x: number;
  readonly rain: number;
  readonly moist: boolean;
}

/** The drawing of the season: lines of the larvae known and foretold, and a column a day. */
export interface SeasonCurve {
  readonly width: number;
  readonly height: number;
  /** Points of a line through what was measured. */
  readonly measured: string;
  /** Points of a line through what was only foretold, from the last measured day on. */
  readonly foretold: string;
  readonly columns: readonly DayColumn[];
  /** Where today begins. */
  readonly today: number;
}

/** Lays the days of an outlook out. */
export function seasonCurve(days: readonly Day[]): SeasonCurve {
  const most = Math.max(LEAST_FULL_MM, ...days.map(({ rainMm }) => rainMm));
  const point = ({ larvae }: Day, at: number): string =>
    `${(at + 0.5) * CURVE.day},${(CURVE.larvae * (1 - larvae)).toFixed(2)}`;
  const past = days.findIndex(({ known }) => known === 'forecast');
  const today = past < 0 ? days.length : past;
  const sure = days.findIndex(({ known }) => known !== 'measured');
  const firstForetold = sure < 0 ? days.length : sure;
  const points = days.map(point);
  return {
    width: days.length * CURVE.day,
    height: CURVE.larvae + CURVE.rain,
    measured: points.slice(0, firstForetold).join(' '),
    foretold: points.slice(Math.max(0, firstForetold - 1)).join(' '),
    columns: days.map(({ on, rainMm, moist }, at) => ({
      on,
      x: at * CURVE.day,
      rain: (CURVE.rain * rainMm) / most,
      moist,
    })),
    today: today * CURVE.day,
  };
}
