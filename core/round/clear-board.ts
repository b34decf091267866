import type { TimeZone } from '../dosing/local-time.ts';
import { type Clear, clearAfter } from '../dosing/withdrawal.ts';
import type { Animal } from '../herd/animal.ts';
import type { VetTime } from '../medicine/approval.ts';
import { withdrawalInForce } from '../medicine/in-force.ts';
import type { Withdrawal } from '../medicine/withdrawal.ts';
import { rateDelivered } from '../quantity/strength.ts';
import { millilitres } from '../quantity/volume.ts';
import { type DayBookEntry, effectOf } from './day-book.ts';
import type { Correction } from './treatment.ts';

/** What keeps meat or milk of an animal back. */
export interface Hold {
  readonly clear: Clear;
  /** The treatment that keeps it back longest. */
  readonly treatmentId: string;
  /** What was given, how long it keeps back and since when (milliseconds since 1970): by the rule, or by the vet's word. */
  readonly because: {
    readonly medicineId: string;
    readonly withdrawal: Withdrawal;
    readonly fromMs: number;
  };
  /** Whether the clock was not trusted at one of the treatments, so that the time is provisional. */
  readonly provisional: boolean;
}

/** What keeps an animal's meat and milk back. */
export interface Holds {
  readonly meat: Hold;
  readonly milk: Hold;
}

/** Whether meat or milk may be used now, and if not, until when. */
export type Use = { readonly kind: 'free' } | Clear;

/**
 * What the day book keeps back of each animal, by its id: the longest of all its treatments, read through their
 * corrections. Never for people outweighs unknown, and unknown outweighs every time.
 */
export function holdsOf(
  entries: readonly DayBookEntry[],
  animals: readonly Pick<Animal, 'id' | 'species'>[],
  zone: TimeZone,
): ReadonlyMap<string, Holds> {
  const species = new Map(animals.map((animal) => [animal.id, animal.species]));
  const holds = new Map<string, Holds>();
  for (const entry of entries) {
    const { animalId } = effectOf(entry);
    if (animalId === null) continue;
    const own = holdsOfOne(entry, species.get(animalId) ?? null, zone);
    const before = holds.get(animalId);
    holds.set(animalId, {
      meat: longer(before?.meat, own.meat),
      milk: longer(before?.milk, own.milk),
    });
  }
  return holds;
}

/** What one treatment keeps back of the animal that swallowed it, by the species of that animal where it is known. */
export function holdsOfOne(entry: DayBookEntry, species: Animal['species'] | null, zone: TimeZone): Holds {
  const ruled = isRuled(entry, species);
  return { meat: holdOf(entry, 'meat', ruled, zone), milk: holdOf(entry, 'milk', ruled, zone) };
}

/** Whether the rule of a treatment is one for the animal that swallowed it and for what it swallowed. */
function isRuled(entry: DayBookEntry, species: Animal['species'] | null): boolean {
  const { regimen, jug, weight, dose } = entry.treatment.offer;
  const { volumeMl } = effectOf(entry);
  if (species !== regimen.species) return false;
  if (volumeMl <= dose.plan.total.value) return true;
  return rateDelivered(millilitres(volumeMl), jug.strength, weight.held.mass).value <= regimen.ceiling.value;
}

/**
 * What one treatment keeps back: by its rule, and by what the veterinarian said of it since.
 *
 * The date of a treatment under a clock nobody trusted is not known; the veterinarian's time for it counts from the day
 * it was entered, which is later.
 */
function holdOf(entry: DayBookEntry, what: 'meat' | 'milk', ruled: boolean, zone: TimeZone): Hold {
  const { treatment, corrections } = entry;
  const rule: Withdrawal = ruled
    ? treatment.offer.regimen[what]
    : { kind: 'unknown', source: 'No rule for this animal or this volume' };
  const said = corrections.findLast((correction) => vetTimeIn(correction, what) !== null);
  const vet = said === undefined ? null : vetTimeIn(said, what);
  const dated = treatment.clockTrusted || said === undefined;
  const from = dated ? treatment.givenAtMs : Math.max(treatment.givenAtMs, said.atMs);
  const withdrawal = withdrawalInForce(rule, vet);
  const clear = clearAfter(withdrawal, from, zone);
  // What was shown at the giving stands, though the zone has changed since; an unknown time gives way to the vet's.
  const shown = ruled && (vet === null || rule.kind !== 'unknown') ? later(treatment[what], clear) : clear;
  return {
    clear: shown,
    treatmentId: treatment.id,
    because: { medicineId: treatment.offer.jug.medicineId, withdrawal, fromMs: from },
    provisional: !treatment.clockTrusted && said === undefined,
  };
}

function vetTimeIn({ what: said }: Correction, what: 'meat' | 'milk'): VetTime | null {
  return said.kind === 'vet-time' ? said[what] : null;
}

const WEIGHT: Readonly<Record<Clear['kind'], number>> = { at: 0, unknown: 1, 'not-for-people': 2 };

function later(a: Clear, b: Clear): Clear {
  if (a.kind === 'at' && b.kind === 'at') return a.atMs >= b.atMs ? a : b;
  return WEIGHT[a.kind] >= WEIGHT[b.kind] ? a : b;
}

function longer(before: Hold | undefined, next: Hold): Hold {
  if (before === undefined) return next;
  const longest = later(before.clear, next.clear) === before.clear ? before : next;
  return { ...longest, provisional: before.provisional || next.provisional };
}

/** Whether meat or milk may be used at an instant. A time counts as over only on a clock that is trusted. */
export function useNow(hold: Hold | undefined, wallMs: number, clockTrusted: boolean): Use {
  if (hold === undefined) return { kind: 'free' };
  const over = hold.clear.kind === 'at' && hold.clear.atMs <= wallMs;
  return over && clockTrusted && !hold.provisional ? { kind: 'free' } : hold.clear;
}
