/** Eyelid colour score: 1 red to 5 white, of the bulging lower lid. For blood-feeding worms only. */
export type Eyelid = 1 | 2 | 3 | 4 | 5;

/** Body condition from 1 to 5 in halves: halves repeat better than whole units (141 ewes, cgl.org.cn). */
export type BodyCondition = 1 | 1.5 | 2 | 2.5 | 3 | 3.5 | 4 | 4.5 | 5;

/** Soiling under the tail, from 0 for none to 5. */
export type Soiling = 0 | 1 | 2 | 3 | 4 | 5;

/** Whether there is a swelling under the jaw. */
export type Jaw = 'none' | 'swollen';

/** The coat, looked at in goats. */
export type Coat = 'smooth' | 'rough';

/** The steps of each score, in the order they are shown. */
export const EYELIDS: readonly Eyelid[] = [1, 2, 3, 4, 5];
export const BODY_CONDITIONS: readonly BodyCondition[] = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5];
export const SOILINGS: readonly Soiling[] = [0, 1, 2, 3, 4, 5];

/** The colour each eyelid score stands for (wormboss.com.au, goats). */
export const EYELID_COLOUR: Readonly<Record<Eyelid, 'red' | 'red-pink' | 'pink' | 'pink-white' | 'white'>> = {
  1: 'red',
  2: 'red-pink',
  3: 'pink',
  4: 'pink-white',
  5: 'white',
};

/** What was looked at in one animal at one time; `null` for each sign that was not. Scores are ranks, never averaged. */
export interface Scores {
  readonly atMs: number;
  readonly by: string;
  readonly eyelid: Eyelid | null;
  readonly body: BodyCondition | null;
  readonly soiling: Soiling | null;
  readonly jaw: Jaw | null;
  readonly coat: Coat | null;
}

/** The number as an eyelid score, or `null` where it is none. */
export function eyelidFrom(value: number): Eyelid | null {
  return EYELIDS.find((step) => step === value) ?? null;
}

/** The number as a body condition in halves, or `null` where it is none: 2.25 is not rounded. */
export function bodyConditionFrom(value: number): BodyCondition | null {
  return BODY_CONDITIONS.find((step) => step === value) ?? null;
}

/** The number as a soiling score, or `null` where it is none. */
export function soilingFrom(value: number): Soiling | null {
  return SOILINGS.find((step) => step === value) ?? null;
}

/**
 * The newest value of each sign, looking back no further than `sinceMs`; `null` where nothing was scored since.
 *
 * A keeper who scores only the eyelid today does not take back yesterday's body condition.
 */
export function latestScores(history: readonly Scores[], sinceMs: number): Scores | null {
  const recent = history.filter(({ atMs }) => atMs >= sinceMs).sort((a, b) => a.atMs - b.atMs);
  const [first, ...later] = recent;
  if (first === undefined) return null;
  return later.reduce(
    (known, next) => ({
      atMs: next.atMs,
      by: next.by,
      eyelid: next.eyelid ?? known.eyelid,
      body: next.body ?? known.body,
      soiling: next.soiling ?? known.soiling,
      jaw: next.jaw ?? known.jaw,
      coat: next.coat ?? known.coat,
    }),
    first,
  );
}
