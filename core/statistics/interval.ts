/** Two limits between which a value lies with the confidence asked for. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}
