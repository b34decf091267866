import { DAY_MS } from '../moment.ts';
import type { Outcome } from '../round/treatment.ts';
import { EGGS_ASKED_FOR } from './judge.ts';

/** What else than resistance may have made a result. */
export type Confounder =
  | 'dose-short'
  | 'dose-not-kept'
  | 'weight-not-from-scale'
  | 'scale-unchecked'
  | 'scale-failed-check'
  | 'syringe-unchecked'
  | 'sampled-early'
  | 'sampled-late'
  | 'few-eggs'
  | 'fell-untreated'
  | 'no-untreated-group'
  | 'genera-not-told';

/** How a dose in a test was given; stored with the test. */
export interface TestDose {
  readonly outcome: Outcome;
  /** What was delivered over what the rule asks for: 1 is the full dose. */
  readonly share: number;
  readonly weightFromScale: boolean;
  readonly scale: 'passed' | 'failed' | 'unchecked';
  readonly syringeChecked: boolean;
  /** Milliseconds since 1970 of the dose and of the second sample. */
  readonly givenAtMs: number;
  readonly sampledAtMs: number;
}

/** A test as its confounders see it. */
export interface TestStory {
  readonly doses: readonly TestDose[];
  readonly eggsBefore: number;
  /** What the untreated fell by as a fraction; `null` where none were sampled. */
  readonly untreatedFell: number | null;
  /** Whether the larvae were cultured, so that each genus is judged for itself. */
  readonly generaTold: boolean;
}

/** A dose is short below this share of the rule (the kiosk's own guard). */
const SHORT_BELOW = 0.95;
/** Days after the dose within which the second sample is taken: 7 to 14, a university extension page. */
const SAMPLED = { from: 7, to: 14 } as const;
/** A fall of the untreated that is worth a word (the kiosk's own guard). */
const FELL = 0.2;

/**
 * What may have made the result beside the worms, in the order a keeper can put it right.
 *
 * Under-dosing and lost doses look like resistance (Vet Times Equine 2021; Morgan 2022, Parasite 29:20). Where genera
 * are not told apart, 15 of 42 "susceptible" mixed infections held a resistant one (McKenna 1997).
 */
export function confoundersOf({ doses, eggsBefore, untreatedFell, generaTold }: TestStory): Confounder[] {
  const any = (is: (dose: TestDose) => boolean): boolean => doses.some(is);
  const day = ({ givenAtMs, sampledAtMs }: TestDose): number => (sampledAtMs - givenAtMs) / DAY_MS;
  const found: readonly (readonly [Confounder, boolean])[] = [
    ['dose-short', any(({ share }) => share < SHORT_BELOW)],
    ['dose-not-kept', any(({ outcome }) => outcome !== 'whole')],
    ['weight-not-from-scale', any(({ weightFromScale }) => !weightFromScale)],
    ['scale-failed-check', any(({ scale }) => scale === 'failed')],
    ['scale-unchecked', any(({ scale }) => scale === 'unchecked')],
    ['syringe-unchecked', any(({ syringeChecked }) => !syringeChecked)],
    ['sampled-early', any((dose) => day(dose) < SAMPLED.from)],
    ['sampled-late', any((dose) => day(dose) > SAMPLED.to)],
    ['few-eggs', eggsBefore < EGGS_ASKED_FOR],
    ['fell-untreated', untreatedFell !== null && untreatedFell > FELL],
    ['no-untreated-group', untreatedFell === null],
    ['genera-not-told', !generaTold],
  ];
  return found.filter(([, is]) => is).map(([confounder]) => confounder);
}
