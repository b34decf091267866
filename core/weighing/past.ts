import type { Centre } from './centre.ts';
import type { Stretch } from './stretch.ts';

/** What the load did elsewhere before it came to the present level. All in seconds. */
export interface Past {
  /** From the step-on until the load first came to the level: the legs landing, if no more than that. */
  readonly rise: number;
  /** The longest rest at one lower load on the way there. */
  readonly restBelow: number;
  /** The load of that rest in grams; 0 where there was none. */
  readonly restedAt: number;
  /** Quiet time at higher loads. */
  readonly above: number;
  /** The longest unbroken time at higher loads. */
  readonly spellAbove: number;
  /** Since the load was last clearly another. */
  readonly sinceApart: number;
  /** Since the load first came to the level. */
  readonly stood: number;
}

/** A load counts as higher from this share above the level. */
const HIGHER = 0.025;
/** A load on the way up rests while it stays within this share of where the rest began. */
const RESTS = 0.03;

/** Goes through the stretch once and notes where else the load has been. */
export function pastOf(stretch: Stretch, { grams, quiet, apart }: Centre): Past {
  const begun = stretch.at[0] ?? 0;
  const now = stretch.at[stretch.count - 1] ?? 0;
  let reached: number | null = null;
  let lastApart = begun;
  let [restBelow, restedAt, rest, restAt] = [0, 0, 0, stretch.grams[0] ?? 0];
  let [above, spellAbove, spell, stood] = [0, 0, 0, 0];
  for (let i = 0; i < stretch.count; i += 1) {
    const at = stretch.at[i] ?? 0;
    const load = stretch.grams[i] ?? 0;
    const lasts = stretch.lasts[i] ?? 0;
    const off = load - grams;
    if (off > apart) above += quiet[i] ?? 0;
    if (Math.abs(off) > apart) lastApart = at;
    spell = off > HIGHER * grams ? spell + lasts : 0;
    spellAbove = Math.max(spellAbove, spell);
    if (reached === null && off >= -apart) reached = at;
    if (reached !== null) stood += lasts;
    else if (Math.abs(load - restAt) < RESTS * restAt) {
      rest += lasts;
      if (rest > restBelow) [restBelow, restedAt] = [rest, restAt];
    } else {
      rest = 0;
      restAt = load;
    }
  }
  return {
    rise: (reached ?? now) - begun,
    restBelow,
    restedAt,
    above,
    spellAbove,
    sinceApart: now - lastApart,
    stood: Math.max(stood, 0.1),
  };
}
