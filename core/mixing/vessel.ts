import { grams, type Mass } from '../quantity/mass.ts';
import { distance, subtract } from '../quantity/quantity.ts';
import { expectedGross } from './expected-gross.ts';
import { type Jug, mayBeInUse } from './jug.ts';

/** An empty jug the farm owns, known by its letter and by what it weighs. Mixes come and go in it. */
export interface Vessel {
  readonly id: string;
  /** The letter painted on it. */
  readonly letter: string;
  /** What it weighed empty, gross, and how well that is known (k = 1). */
  readonly empty: Mass;
  readonly uncertainty: Mass;
  /** Milliseconds since 1970. */
  readonly learnedAtMs: number;
  readonly by: string;
  /** Milliseconds since 1970 when it was weighed anew or given up; `null` while it is known. */
  readonly retiredAtMs: number | null;
}

/** Why what stands on the bench is not taken for a known empty jug. */
export type VesselDoubt =
  | { readonly kind: 'first' }
  | { readonly kind: 'heavier' | 'lighter'; readonly than: Vessel; readonly by: Mass }
  | { readonly kind: 'holds-mix'; readonly jugId: string };

/** What stands on the bench: a known empty jug, or something to be asked about. */
export type VesselMatch =
  | { readonly known: true; readonly vessel: Vessel }
  | { readonly known: false; readonly doubt: VesselDoubt };

/** What may cling to a rinsed jug, in grams (our own guard): a third of a percent of a quart. */
const WET = 3;

/** How far a known jug may weigh from what it weighed empty and still be it, empty. */
export function emptySlack(vessel: Vessel, uncertainty: Mass): Mass {
  return grams(WET + 2 * Math.hypot(vessel.uncertainty.value, uncertainty.value));
}

/**
 * Compares a gross weight at rest with the jugs that are known.
 *
 * The nearest known jug within its slack is it. A weight above one is that jug with something in it, or another jug:
 * only a person can tell. A weight that a jug in service would have with its mix is no empty jug at all.
 */
export function matchVessel(
  mass: Mass,
  uncertainty: Mass,
  vessels: readonly Vessel[],
  jugs: readonly Jug[],
  wallMs: number,
): VesselMatch {
  const known = vessels
    .filter(({ retiredAtMs }) => retiredAtMs === null)
    .sort((a, b) => distance(a.empty, mass).value - distance(b.empty, mass).value);
  const nearest = known.find(
    (vessel) => distance(vessel.empty, mass).value <= emptySlack(vessel, uncertainty).value,
  );
  if (nearest !== undefined) return { known: true, vessel: nearest };
  const full = jugs.find((jug) => weighsLike(jug, mass, uncertainty, wallMs));
  if (full !== undefined) return { known: false, doubt: { kind: 'holds-mix', jugId: full.id } };
  const below = known.filter(({ empty }) => empty.value < mass.value);
  const than = below[0] ?? known[0];
  if (than === undefined) return { known: false, doubt: { kind: 'first' } };
  const kind = below.length > 0 ? 'heavier' : 'lighter';
  return { known: false, doubt: { kind, than, by: grams(Math.abs(subtract(mass, than.empty).value)) } };
}

function weighsLike(jug: Jug, mass: Mass, uncertainty: Mass, wallMs: number): boolean {
  const expected = mayBeInUse(jug, wallMs, false) ? expectedGross(jug, uncertainty) : null;
  return expected !== null && distance(expected.mass, mass).value <= expected.slack.value;
}

const LETTERS = 'ABCDEFGHJKLMNPRSTUVWXYZ';

/** The first letter no known jug wears; letters that look like figures are left out. */
export function freshLetter(vessels: readonly Vessel[]): string {
  const worn = new Set(vessels.filter(({ retiredAtMs }) => retiredAtMs === null).map(({ letter }) => letter));
  const free = [...LETTERS].find((letter) => !worn.has(letter));
  return free ?? `A${worn.size}`;
}
