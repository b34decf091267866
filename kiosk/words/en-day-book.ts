import type { LapseReason } from '../../core/round/offer.ts';
import type { SkipReason } from '../../core/round/state.ts';
import type { BookKind } from '../../shared/book-kinds.ts';
import type { UntreatedView } from '../../shared/day-book.ts';
import type { CorrectionView, TreatmentView } from '../../shared/dose.ts';
import type { Narrowing } from '../daybook/book-filter.ts';

const REASONS: Record<SkipReason | LapseReason, string> = {
  'not-needed': 'not needed',
  sick: 'sick',
  refused: 'refused it',
  later: 'later',
  stopped: 'a stop',
  'timed-out': 'ran out',
  'new-animal': 'next animal came',
  'identity-doubted': 'which animal?',
  reweighed: 'weighed again',
  'jug-changed': 'jug changed',
  'syringes-changed': 'syringes changed',
  'rules-changed': 'rules changed',
};

/** English words of the day book. */
export const enDayBook = {
  empty: 'Nothing written yet.',
  noneSo: 'Nothing like that is written.',
  narrow: 'Show',
  everything: 'everything',
  all: 'All',
  narrowOff: 'Show everything',
  showThese: 'Show these',
  oneGone: 'one that left',
  nobodyNamed: 'no name',
  narrowings: {
    kind: 'What',
    days: 'Days',
    animal: 'Animal',
    medicine: 'Medicine',
    by: 'Person',
  } satisfies Record<Narrowing, string>,
  kinds: {
    treatment: 'Treatments',
    corrected: 'Corrected',
    skipped: 'Skipped',
    lapsed: 'Ended',
  } satisfies Record<BookKind, string>,
  daysBack: (days: number) => (days === 1 ? 'Last day' : days === 365 ? 'Last year' : `Last ${days} days`),
  untreated: {
    skipped: 'skipped',
    lapsed: 'offer ended',
    'not-given': 'not given',
  } satisfies Record<UntreatedView['kind'], string>,
  /** Why a visit was skipped or an offer ended, by its code. */
  reason: REASONS as Readonly<Record<string, string>>,
  dose: 'Dose',
  beside: 'Beside it',
  correct: 'Correct this',
  corrected: 'corrected',
  notGiven: 'not given',
  wasFirst: (what: string) => `was ${what}`,
  animal: 'Animal',
  weight: 'Weight',
  medicine: 'Medicine',
  strength: 'Strength',
  volume: 'Volume',
  exact: (volume: string) => `exactly ${volume}`,
  syringe: 'Syringe',
  route: 'Way',
  routeOral: 'by mouth',
  delivered: 'Delivered',
  lot: 'Lot',
  lastOne: 'its last one',
  method: 'By group',
  groupOf: (count: number, heaviest: string, weight: string, day: string) =>
    `of ${count}, by the heaviest: ${heaviest} ${weight}, ${day}`,
  jug: 'Jug',
  proof: 'Jug known by',
  proofHow: {
    bench: 'its weight on the bench',
    held: 'a held press on its number',
    tap: 'a tap, no other in use',
  } satisfies Record<NonNullable<TreatmentView['proof']>, string>,
  proofNotKept: 'not kept then',
  left: (volume: string) => `, ${volume} stayed in the syringe`,
  outcome: 'Outcome',
  given: 'Given',
  by: 'By',
  onWord: 'On word of',
  direction: { label: 'the label', veterinarian: 'our veterinarian' },
  late: 'logged afterwards',
  readBack: 'by voice',
  meat: 'Meat clear',
  milk: 'Milk clear',
  accepted: (title: string) => `Accepted: ${title}`,
  noBeside: 'No corrections, nothing accepted.',
  correction: {
    'not-given': () => 'Not given',
    'wrong-animal': (name: string) => `It was ${name}`,
    'wrong-volume': (_name: string, volume: string) => `It was ${volume}`,
    'vet-time': () => 'The vet’s time',
  } satisfies Record<CorrectionView['kind'], (name: string, volume: string) => string>,
  doubt: (g: string) => `± ${g}`,
};
