import { describe, expect, test } from 'vitest';
import { type CheckSpot, CORNERS } from '../../core/checking/check-record.ts';
import type { ScaleCheckStep } from '../../core/checking/scale-check-state.ts';
import type { CheckStanding } from '../../core/checking/standing.ts';
import type { SyringeCheck } from '../../core/checking/syringe-check-state.ts';
import type { AnimalClass as CoreClass, Species as CoreSpecies } from '../../core/herd/animal.ts';
import type { MixingStep } from '../../core/jug/state.ts';
import type { PowderWatch } from '../../core/jug/watch-powder.ts';
import type { JugLife } from '../../core/mixing/jug.ts';
import type { PourAdvice } from '../../core/mixing/pour.ts';
import type { Confounder } from '../../core/reduction/confounders.ts';
import type { TestStep } from '../../core/reduction/reduction-test.ts';
import type { Verdict } from '../../core/reduction/verdict.ts';
import type { SkipReason, Step } from '../../core/round/state.ts';
import type { Correction, Outcome } from '../../core/round/treatment.ts';
import type { DeckVerdict } from '../../core/weighing/deck.ts';
import { AnimalClass, Species } from '../../shared/animal.ts';
import { CheckView, CornerName, ScaleChecksView, SpotName } from '../../shared/check.ts';
import { CorrectionView, TreatmentView } from '../../shared/dose.ts';
import { CorrectionKind, Intent } from '../../shared/intent.ts';
import { JugView } from '../../shared/jug.ts';
import { MixingView, PourView } from '../../shared/mixing.ts';
import { ConfounderView, TestStepView, VerdictView } from '../../shared/reduction-test.ts';
import { RoundView } from '../../shared/round.ts';
import { KioskState } from '../../shared/state.ts';
import { SyringeCheckView } from '../../shared/syringe-check.ts';

/** The words of a union of the core, named so that a new one does not compile until it is here. */
function words<W extends string>(all: Readonly<Record<W, true>>): string[] {
  return Object.keys(all).sort();
}

/** The values an enum schema takes. */
function options(schema: { readonly options: readonly string[] }): string[] {
  return [...schema.options].sort();
}

/** The literal of one key in every variant of a union schema. */
function literals(union: { readonly options: readonly { readonly shape: object }[] }, key: string): string[] {
  return union.options
    .map(({ shape }) => (shape as Record<string, { readonly value: string }>)[key]?.value ?? '')
    .sort();
}

function intent(type: string) {
  const found = Intent.options.find(({ shape }) => shape.type.value === type);
  if (found === undefined) throw new Error(`no intent ${type}`);
  return found.shape as unknown as Record<string, { readonly options: readonly string[] }>;
}

describe('the wire has the very words of the core, no more and no fewer, for', () => {
  test('species and classes', () => {
    expect(options(Species)).toEqual(words<CoreSpecies>({ goat: true, sheep: true, cattle: true }));
    expect(options(AnimalClass)).toEqual(
      words<CoreClass>({ female: true, male: true, castrate: true, young: true }),
    );
  });

  test('what a reduction test tells, where it stands, and what else may have made it', () => {
    expect(options(VerdictView)).toEqual(
      words<Verdict>({ resistant: true, 'low-resistant': true, susceptible: true, inconclusive: true }),
    );
    expect(options(TestStepView)).toEqual(
      words<TestStep>({
        before: true,
        waiting: true,
        due: true,
        overdue: true,
        done: true,
        'given-up': true,
      }),
    );
    expect(options(ConfounderView)).toEqual(
      words<Confounder>({
        'dose-short': true,
        'dose-not-kept': true,
        'strength-doubtful': true,
        'weight-not-from-scale': true,
        'weight-by-group': true,
        'scale-unchecked': true,
        'scale-failed-check': true,
        'syringe-unchecked': true,
        'other-medicine': true,
        'sampled-early': true,
        'sampled-late': true,
        'few-eggs': true,
        'fell-untreated': true,
        'no-untreated-group': true,
        'genera-not-told': true,
      }),
    );
  });

  test('the verdict of the platform', () => {
    const verdicts = words<DeckVerdict>({
      blank: true,
      fault: true,
      net: true,
      'not-zeroed': true,
      empty: true,
      'stepping-on': true,
      settling: true,
      held: true,
      leaning: true,
      'two-animals': true,
      'stepping-off': true,
    });
    expect(options(KioskState.shape.platform.shape.verdict)).toEqual(verdicts);
  });

  test('the steps of the round and of the mixing', () => {
    const steps = words<Step>({
      'no-jug': true,
      'prove-jug': true,
      visit: true,
      'which-animal': true,
      cautions: true,
      offered: true,
      logging: true,
      logged: true,
    });
    expect(literals(RoundView, 'step')).toEqual(steps);
    const mixing = words<MixingStep>({
      idle: true,
      lot: true,
      dilution: true,
      water: true,
      place: true,
      'new-jug': true,
      pour: true,
      powder: true,
      dissolve: true,
      label: true,
    });
    expect(literals(MixingView, 'step')).toEqual(mixing);
  });

  test('the steps, spots and standings of the checks', () => {
    const steps = words<ScaleCheckStep>({
      idle: true,
      zero: true,
      weight: true,
      bottle: true,
      middle: true,
      off: true,
      corner: true,
      second: true,
      both: true,
      down: true,
      result: true,
    });
    expect(literals(CheckView, 'step')).toEqual(steps);
    const spots = words<CheckSpot>({
      zero: true,
      bottle: true,
      middle: true,
      returned: true,
      'front-left': true,
      'front-right': true,
      'back-right': true,
      'back-left': true,
      both: true,
      down: true,
    });
    expect(options(SpotName)).toEqual(spots);
    expect(CornerName.options).toEqual([...CORNERS]);
    const standings = words<CheckStanding>({
      never: true,
      fresh: true,
      undated: true,
      due: true,
      overdue: true,
      failed: true,
    });
    expect(options(ScaleChecksView.shape.standing)).toEqual(standings);
    const syringe = words<SyringeCheck['step']>({ idle: true, cup: true, deliver: true, result: true });
    expect(literals(SyringeCheckView, 'step')).toEqual(syringe);
  });

  test('outcomes, skips and corrections', () => {
    const outcomes = words<Outcome>({ whole: true, part: true, 'spat-out': true });
    expect(options(TreatmentView.shape.outcome)).toEqual(outcomes);
    expect([...(intent('give')['outcome']?.options ?? [])].sort()).toEqual(outcomes);
    const skips = words<SkipReason>({
      'not-needed': true,
      sick: true,
      refused: true,
      later: true,
      stopped: true,
    });
    expect([...(intent('skip')['reason']?.options ?? [])].sort()).toEqual(skips);
    const kinds = words<Correction['what']['kind']>({
      'not-given': true,
      'wrong-animal': true,
      'wrong-volume': true,
      'vet-time': true,
    });
    expect(options(CorrectionView.shape.kind)).toEqual(kinds);
    expect(literals(CorrectionKind, 'kind')).toEqual(kinds);
  });

  test('jugs, pouring and powder', () => {
    expect(options(JugView.shape.life)).toEqual(
      words<JugLife>({ 'in-life': true, 'past-use-by': true, empty: true, discarded: true }),
    );
    expect(options(PourView.shape.advice)).toEqual(
      words<PourAdvice | 'jug-lifted' | 'scale-moved' | 'scale-tared'>({
        pour: true,
        slow: true,
        stop: true,
        over: true,
        'jug-lifted': true,
        'scale-moved': true,
        'scale-tared': true,
      }),
    );
    const powder = MixingView.options.find(({ shape }) => shape.step.value === 'powder');
    if (powder === undefined) throw new Error('the mixing has no powder step');
    const { verdict } = powder.shape as unknown as { verdict: { readonly options: readonly string[] } };
    expect(options(verdict)).toEqual(
      words<PowderWatch>({
        none: true,
        whole: true,
        part: true,
        'too-much': true,
        'jug-lifted': true,
        'jug-changed': true,
      }),
    );
  });
});
