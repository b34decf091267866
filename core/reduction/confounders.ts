import type { Outcome } from '../round/treatment.ts';
import { EGGS_ASKED_FOR } from './guideline.ts';
import { daysAfter, type RetestWindow } from './retest.ts';

/** What else than resistance may have made a result. */
export type Confounder =
  | 'dose-short'
  | 'dose-not-kept'
  | 'strength-doubtful'
  | 'weight-not-from-scale'
  | 'weight-by-group'
  | 'scale-unchecked'
  | 'scale-failed-check'
  | 'syringe-unchecked'
  | 'other-medicine'
  | 'sampled-early'
  | 'sampled-late'
  | 'few-eggs'
  | 'fell-untreated'
  | 'no-untreated-group'
  | 'genera-not-told';

/** How a dose in a test was given, as the day book tells it. */
export interface TestDose {
  readonly outcome: Outcome;
  /** What was delivered over what the rule asks for: 1 is the full dose. */
  readonly share: number;
  /** Standard uncertainty of the strength of jug or bottle as a share of it (k = 1). */
  readonly strengthDoubt: number;
  readonly weightFromScale: boolean;
  /** Whether it was a group's dose, by the heaviest and by last weights. */
  readonly byGroup: boolean;
  readonly scale: 'passed' | 'failed' | 'unchecked';
  readonly syringeChecked: boolean;
  /** Whether the animal had another medicine against worms between its first sample and its second. */
  readonly otherMedicine: boolean;
  /** Milliseconds since 1970 of the dose and of the second sample. */
  readonly givenAtMs: number;
  readonly sampledAtMs: number;
}

/** A test as its confounders see it. */
export interface TestStory {
  readonly doses: readonly TestDose[];
  readonly window: Pick<RetestWindow, 'fromDay' | 'untilDay'>;
  readonly eggsBefore: number;
  /** What the untreated fell by as a fraction; `null` where none were sampled. */
  readonly untreatedFell: number | null;
  /** Whether the larvae were cultured, so that each genus is judged for itself. */
  readonly generaTold: boolean;
}

/** One confounder, and how many of the doses it is about; 0 where it is about the test as a whole. */
export interface FoundConfounder {
  readonly confounder: Confounder;
  readonly doses: number;
}

/** A dose is short below this share of the rule (the kiosk's own guard). */
const SHORT_BELOW = 0.95;
/** A strength doubted by more than this (k = 2) is doubtful: more than a mix may be off by plan (the kiosk's own guard). */
const STRENGTH_DOUBT = 0.05;
/** A fall of the untreated that is worth a word (the kiosk's own guard). */
const FELL = 0.2;

/**
 * What may have made the result beside the worms, in the order a keeper can put it right.
 *
 * Under-dosing and lost doses look like resistance (Vet Times Equine 2021; Morgan 2022, Parasite 29:20). Where genera
 * are not told apart, 15 of 42 "susceptible" mixed infections held a resistant one (McKenna 1997).
 */
export function confoundersOf(story: TestStory): FoundConfounder[] {
  const { doses, window, eggsBefore, untreatedFell, generaTold } = story;
  const day = ({ givenAtMs, sampledAtMs }: TestDose): number => daysAfter(givenAtMs, sampledAtMs);
  const ofDoses: readonly (readonly [Confounder, (dose: TestDose) => boolean])[] = [
    ['dose-short', ({ share }) => share < SHORT_BELOW],
    ['dose-not-kept', ({ outcome }) => outcome !== 'whole'],
    ['strength-doubtful', ({ strengthDoubt }) => 2 * strengthDoubt > STRENGTH_DOUBT],
    ['weight-not-from-scale', ({ weightFromScale }) => !weightFromScale],
    ['weight-by-group', ({ byGroup }) => byGroup],
    ['scale-failed-check', ({ scale }) => scale === 'failed'],
    ['scale-unchecked', ({ scale }) => scale === 'unchecked'],
    ['syringe-unchecked', ({ syringeChecked }) => !syringeChecked],
    ['other-medicine', ({ otherMedicine }) => otherMedicine],
    ['sampled-early', (dose) => day(dose) < window.fromDay],
    ['sampled-late', (dose) => day(dose) > window.untilDay],
  ];
  const ofTest: readonly (readonly [Confounder, boolean])[] = [
    ['few-eggs', eggsBefore < EGGS_ASKED_FOR],
    ['fell-untreated', untreatedFell !== null && untreatedFell > FELL],
    ['no-untreated-group', untreatedFell === null],
    ['genera-not-told', !generaTold],
  ];
  return [
    ...ofDoses.flatMap(([confounder, is]) => {
      const count = doses.filter(is).length;
      return count === 0 ? [] : [{ confounder, doses: count }];
    }),
    ...ofTest.flatMap(([confounder, is]) => (is ? [{ confounder, doses: 0 }] : [])),
  ];
}
