/** What an event may tell of: each is a record of one kiosk that others of the farm need. */
export const EVENT_KINDS = [
  'animal',
  'animal-change',
  'animal-merge',
  'jug',
  'jug-discarded',
  'treatment',
  'correction',
  'untreated',
  'weighing',
  'weight-word',
  'score',
  'score-taken-back',
  'note',
  'reduction-test',
  'reduction-test-end',
  'egg-count',
  'egg-count-correction',
  'clock-correction',
] as const;
/** What an event may tell of. */
export type EventKind = (typeof EVENT_KINDS)[number];

/** One thing that happened at one kiosk, told once and never changed. */
export interface Event {
  /** The kiosk it happened at. */
  readonly kiosk: string;
  /** The life of that kiosk: a new one begins whenever its records were put back to an earlier state. */
  readonly life: string;
  /** Its place in that life, from 1 without gaps. */
  readonly sequence: number;
  /** A UUIDv7, the same wherever the event goes. */
  readonly id: string;
  /** A hybrid clock, as `clockText` writes it. */
  readonly clock: string;
  /** An {@link EventKind}, or one that a newer program knows. */
  readonly kind: string;
  /** What is told, by names that hold on every kiosk. */
  readonly body: unknown;
}
