import type { EggCountView, SampleMethodView } from '../../shared/egg-count.ts';

/** How the samples of one sitting are counted. */
export interface Counting {
  /** `null` until one was chosen. */
  readonly method: SampleMethodView | null;
  readonly purpose: 'herd' | 'ill' | 'bought-in';
  /** A date such as "2026-04-30"; `null` for today. */
  readonly takenOn: string | null;
}

/** What a sitting begins with: the slide of the newest count, for the herd, today. */
export function setUpFrom(counts: readonly EggCountView[]): Counting {
  const newest = counts.reduce<EggCountView | null>(
    (last, count) => (last === null || count.loggedAt > last.loggedAt ? count : last),
    null,
  );
  return { method: newest?.method ?? null, purpose: 'herd', takenOn: null };
}
