import { type HerdAnimal, isPresent } from './herd-animal.ts';

/** Why an animal cannot be put down as gone. */
export type LeaveRefusal = 'already-gone' | 'in-future' | 'before-birth';

/** The animal as gone, or why not. */
export type LeaveResult =
  | { readonly ok: true; readonly animal: HerdAnimal }
  | { readonly ok: false; readonly why: LeaveRefusal };

/** Puts an animal down as sold or dead at `atMs`; its record and its numbers stay. `wallMs` is now. */
export function leaveHerd(
  animal: HerdAnimal,
  how: 'sold' | 'died',
  atMs: number,
  by: string,
  wallMs: number,
): LeaveResult {
  if (!isPresent(animal)) return { ok: false, why: 'already-gone' };
  if (atMs > wallMs) return { ok: false, why: 'in-future' };
  if (animal.bornAtMs !== null && atMs < animal.bornAtMs) return { ok: false, why: 'before-birth' };
  return { ok: true, animal: { ...animal, inMilk: false, life: { kind: how, atMs, by } } };
}
