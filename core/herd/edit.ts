import { HOUR_MS } from '../moment.ts';
import type { AnimalClass } from './animal.ts';
import { type HerdAnimal, isPresent } from './herd-animal.ts';
import { sameNumber } from './numbers.ts';

/** One thing a keeper sets right about an animal. Days are midnight UTC in milliseconds since 1970. */
export type AnimalEdit =
  | { readonly what: 'name'; readonly name: string }
  | { readonly what: 'class'; readonly class: AnimalClass }
  | { readonly what: 'milk'; readonly inMilk: boolean }
  | { readonly what: 'day'; readonly day: AnimalDay; readonly onMs: number | null }
  | { readonly what: 'pen'; readonly pen: string | null }
  | { readonly what: 'mark'; readonly mark: string | null }
  | { readonly what: 'photo'; readonly photo: string | null };

/** The days of its life that are kept of an animal. */
export type AnimalDay = 'born' | 'bred' | 'males-removed' | 'kidded' | 'in-milk-since';

/** Why an edit is refused. */
export type EditRefusal =
  | 'gone'
  | 'name-in-use'
  | 'females-only'
  | 'not-in-milk'
  | 'in-future'
  | 'too-long-ago'
  | 'before-birth';

/** The animal after the edit, or why not. */
export type EditResult =
  | { readonly ok: true; readonly animal: HerdAnimal }
  | { readonly ok: false; readonly why: EditRefusal };

/** Somewhere on earth it is already this much later, so a day may begin so far ahead. */
const AHEAD_MS = 14 * HOUR_MS;
/** No animal in a herd is older (the kiosk's own guard), in years of 365.25 days. */
const OLDEST_MS = 40 * 365.25 * 24 * HOUR_MS;

/** Edits an animal. `herd` is all animals, `atMs` is now. */
export function editAnimal(
  animal: HerdAnimal,
  edit: AnimalEdit,
  herd: readonly HerdAnimal[],
  atMs: number,
): EditResult {
  if (!isPresent(animal)) return { ok: false, why: 'gone' };
  switch (edit.what) {
    case 'name':
      return renamed(animal, edit.name.trim(), herd);
    case 'class': {
      const bears = edit.class === 'female' || edit.class === 'young';
      const kept = bears
        ? {}
        : { inMilk: false, inMilkSinceMs: null, bredAtMs: null, malesRemovedAtMs: null };
      return { ok: true, animal: { ...animal, class: edit.class, ...kept } };
    }
    case 'milk': {
      if (edit.inMilk && animal.class !== 'female') return { ok: false, why: 'females-only' };
      const inMilkSinceMs = edit.inMilk ? (animal.inMilkSinceMs ?? cameIntoMilk(animal, atMs)) : null;
      return { ok: true, animal: { ...animal, inMilk: edit.inMilk, inMilkSinceMs } };
    }
    case 'day':
      return onDay(animal, edit.day, edit.onMs, atMs);
    case 'pen':
      return { ok: true, animal: { ...animal, pen: edit.pen } };
    case 'mark':
      return { ok: true, animal: { ...animal, mark: edit.mark } };
    case 'photo':
      return { ok: true, animal: { ...animal, photo: edit.photo } };
  }
}

function renamed(animal: HerdAnimal, name: string, herd: readonly HerdAnimal[]): EditResult {
  const taken = herd.some(
    (other) => other.id !== animal.id && isPresent(other) && sameNumber(other.name) === sameNumber(name),
  );
  return taken ? { ok: false, why: 'name-in-use' } : { ok: true, animal: { ...animal, name } };
}

function onDay(animal: HerdAnimal, day: AnimalDay, onMs: number | null, atMs: number): EditResult {
  if (day !== 'born' && animal.class !== 'female' && animal.class !== 'young') {
    return { ok: false, why: 'females-only' };
  }
  if (onMs !== null && onMs > atMs + AHEAD_MS) return { ok: false, why: 'in-future' };
  if (onMs !== null && atMs - onMs > OLDEST_MS) return { ok: false, why: 'too-long-ago' };
  switch (day) {
    case 'born': {
      const others = [animal.bredAtMs, animal.malesRemovedAtMs, animal.kiddedAtMs, animal.inMilkSinceMs];
      const clash = onMs !== null && others.some((other) => other !== null && other < onMs);
      return clash ? { ok: false, why: 'before-birth' } : { ok: true, animal: { ...animal, bornAtMs: onMs } };
    }
    case 'bred':
    case 'males-removed':
    case 'kidded':
    case 'in-milk-since':
      if (onMs !== null && animal.bornAtMs !== null && onMs < animal.bornAtMs) {
        return { ok: false, why: 'before-birth' };
      }
      return withDay(animal, day, onMs);
  }
}

function withDay(animal: HerdAnimal, day: Exclude<AnimalDay, 'born'>, onMs: number | null): EditResult {
  switch (day) {
    case 'bred':
      return { ok: true, animal: { ...animal, bredAtMs: onMs } };
    case 'males-removed':
      return { ok: true, animal: { ...animal, malesRemovedAtMs: onMs } };
    case 'kidded':
      return { ok: true, animal: kidded(animal, onMs) };
    case 'in-milk-since':
      return animal.inMilk
        ? { ok: true, animal: { ...animal, inMilkSinceMs: onMs } }
        : { ok: false, why: 'not-in-milk' };
  }
}

/** Birth ends the pregnancy that began before it: cautions for the pregnant would else go on for a mother. */
function kidded(animal: HerdAnimal, onMs: number | null): HerdAnimal {
  if (onMs === null) return { ...animal, kiddedAtMs: null };
  const over = (atMs: number | null): number | null => (atMs !== null && atMs <= onMs ? null : atMs);
  const fresh = animal.inMilk && (animal.inMilkSinceMs === null || animal.inMilkSinceMs < onMs);
  return {
    ...animal,
    kiddedAtMs: onMs,
    bredAtMs: over(animal.bredAtMs),
    malesRemovedAtMs: over(animal.malesRemovedAtMs),
    inMilkSinceMs: fresh ? onMs : animal.inMilkSinceMs,
  };
}

/** An animal that gave birth within this time came into milk by it (the kiosk's own guard). */
const MILKED_MS = 365 * 24 * HOUR_MS;

function cameIntoMilk({ kiddedAtMs }: HerdAnimal, atMs: number): number {
  return kiddedAtMs !== null && atMs - kiddedAtMs < MILKED_MS ? kiddedAtMs : atMs;
}
