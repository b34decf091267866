/** A range in even steps, as the wire bounds it. */
interface Range {
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

/** Which step of a range a value is at, from 1; a value between two counts as the nearer. */
export function levelOf(value: number, { least, step }: Range): number {
  return 1 + Math.round((value - least) / step);
}

/** The value one step on or back, never beyond the ends. */
export function stepped(value: number, by: 1 | -1, { least, most, step }: Range): number {
  return Math.min(most, Math.max(least, value + by * step));
}
