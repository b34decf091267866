import { expect, test } from 'vitest';
import type { ScaleCheckRefusal } from '../../core/checking/scale-check-state.ts';
import type { SyringeCheckRefusal } from '../../core/checking/syringe-check-state.ts';
import type { MixingRefusal } from '../../core/jug/state.ts';
import type { whyNotApprovable } from '../../core/medicine/approval.ts';
import type { RoundRefusal } from '../../core/round/state.ts';
import { REFUSALS, type Refusal } from '../../shared/intent.ts';

type CoreRefusal =
  | RoundRefusal
  | MixingRefusal
  | ScaleCheckRefusal
  | SyringeCheckRefusal
  | NonNullable<ReturnType<typeof whyNotApprovable>>;

/** Every refusal the core can give; one more does not compile until it stands here, one of none does not either. */
const FROM_CORE = {
  'wrong-state': true,
  'no-such-jug': true,
  'jug-out-of-life': true,
  'not-this-jug': true,
  'not-an-extra': true,
  'more-than-drawn': true,
  'needs-held-press': true,
  'no-such-animal': true,
  'no-such-caution': true,
  'cannot-pass-stop': true,
  'offer-ended': true,
  'platform-not-ready': true,
  'no-such-packet': true,
  'no-such-lot': true,
  'lot-expired': true,
  'temperature-out-of-range': true,
  'bench-not-ready': true,
  'bench-moving': true,
  'no-jug-on-scale': true,
  'scale-too-coarse': true,
  'too-little-water': true,
  'tared-mid-way': true,
  'no-such-amount': true,
  'stronger-than-known': true,
  'far-from-label': true,
  'too-weak': true,
  'holds-mix': true,
  'no-such-vessel': true,
  'needs-held-word': true,
  'far-too-much-water': true,
  'jug-not-back': true,
  'no-powder-seen': true,
  'powder-far-off': true,
  'jug-weight-unknown': true,
  'jug-weighs-otherwise': true,
  'jugs-weigh-alike': true,
  'needs-veterinarian': true,
  'needs-rate': true,
  'rate-not-needed': true,
  'no-such-weight': true,
  'weight-too-light': true,
  'scale-not-ready': true,
  'scale-moving': true,
  'scale-tared': true,
  'not-at-zero': true,
  'nothing-on-scale': true,
  'weight-still-on': true,
  'no-such-syringe': true,
  'no-such-mark': true,
  'too-coarse-for-syringe': true,
  'nothing-delivered': true,
  'more-than-one-delivery': true,
} satisfies Record<CoreRefusal, true>;

test('every refusal of the core can be told over the wire', () => {
  const known: Record<CoreRefusal, true> extends Record<Extract<Refusal, CoreRefusal>, true> ? true : false =
    true;
  expect(known).toBe(true);
  for (const refusal of Object.keys(FROM_CORE)) expect(REFUSALS).toContain(refusal);
});

test('the compiler knows every refusal of the core as one of the wire', () => {
  const untold: Exclude<CoreRefusal, Refusal>[] = [];
  const told: readonly Refusal[] = Object.keys(FROM_CORE) as CoreRefusal[];
  expect(untold).toEqual([]);
  expect(told.length).toBe(Object.keys(FROM_CORE).length);
});

test('no refusal stands twice', () => {
  expect(new Set(REFUSALS).size).toBe(REFUSALS.length);
});
