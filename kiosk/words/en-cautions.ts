import type { CautionCode } from '../../core/dosing/cautions.ts';
import { enReductionTest } from './en-reduction-test.ts';
import type { Show } from './show.ts';

/** What a caution says: the matter in a few words, then what is known, then what accepting it means. */
export interface CautionWords {
  readonly title: string;
  readonly detail: string;
  /** Ends the sentence "Accept: …"; empty for a stop, which cannot be accepted. */
  readonly accept: string;
}

type Say = (v: Readonly<Record<string, number>>, show: Show) => CautionWords;

function say(title: string, detail: string, accept = ''): CautionWords {
  return { title, detail, accept };
}

/** English words for every caution; none can be added to the codes without its words here. */
export const enCautions: Readonly<Record<CautionCode, Say>> = {
  'not-kept': () =>
    say('Nothing can be logged', 'The card takes no records: a dose given now would be lost.'),
  'species-not-covered': () =>
    say('Not for this kind of animal', 'This medicine has no rule here for the species. Do not give it.'),
  'presentation-not-covered': () =>
    say(
      'Not what is in this bottle',
      'The rule for this kind of animal is for another presentation of the medicine. Do not give this one.',
    ),
  'not-approved': () =>
    say('Rule not approved', 'Nobody on this farm has approved this dose rule. Read it at Shed first.'),
  'jug-past-use-by': (v, show) =>
    say('This jug is too old', `It was good until ${show.when(v['useByMs'])}. Mix a fresh one.`),
  'jug-empty': () => say('This jug is empty', 'By the day book nothing is left in it. Take another.'),
  'jug-too-little': (v, show) =>
    say('Not enough left', `By the day book ${show.volume(v['leftMl'])} is left: less than this dose.`),
  'no-syringe': () =>
    say('No syringe can measure this', 'Add a finer or larger one at Shed, or mix another strength.'),
  'same-active-today': (v, show) =>
    say(
      'Already dosed',
      (v['repeatDays'] ?? 1) < 1
        ? `It had this medicine ${show.when(v['lastGivenAtMs'])}. The rule waits ${show.number(24 * (v['repeatDays'] ?? 1), 1)} hours: not before ${show.when(v['nextAtMs'])}.`
        : `It had this medicine ${show.when(v['lastGivenAtMs'])}. Never twice in 24 hours, and by the rule not for ${show.number(v['repeatDays'])} days.`,
    ),
  'top-up': (v, show) =>
    say(
      'The rest, no more',
      `It had a part ${show.when(v['lastGivenAtMs'])}. This is what the syringe still held, and this rule lets it follow.`,
      'it took no more than that part',
    ),
  'unanswered-offer': () =>
    say('Was the last dose given?', 'A dose was shown for this animal and nobody answered. Answer first.'),
  'repeat-too-soon': (v, show) =>
    say(
      'Dosed not long ago',
      `It had this medicine ${show.day(v['lastGivenAtMs'])}. The rule waits ${show.number(v['repeatDays'])} days.`,
      'dose it again this soon',
    ),
  'unknown-medicine-given': (v, show) =>
    say(
      'Unknown medicine',
      `Given ${show.when(v['lastGivenAtMs'])}, maybe at another kiosk. It may be the same active: see the day book.`,
      'another active',
    ),
  'weight-outside-species': (v, show) =>
    say(
      'Odd weight for its kind',
      `${show.weight(v['grams'])} is outside what this kind weighs. Is it alone on the platform?`,
      `${show.weight(v['grams'])} is right`,
    ),
  'weight-pounds-for-kilograms': (v, show) =>
    say(
      'Pounds or kilograms?',
      `Now ${show.weight(v['grams'])}, last time ${show.weight(v['lastGrams'])}: they differ as pounds and kilograms do.`,
      `${show.weight(v['grams'])} is right`,
    ),
  'weight-far-from-last': (v, show) =>
    say(
      'Far from its last weight',
      `Now ${show.weight(v['grams'])}, last time ${show.weight(v['lastGrams'])}. Is it the right animal?`,
      `${show.weight(v['grams'])} is right`,
    ),
  'weight-changed': (v, show) =>
    say(
      'The weight moved',
      `Held at ${show.weight(v['fromGrams'])}, then at ${show.weight(v['grams'])}. Did someone lean on it?`,
      `${show.weight(v['grams'])} is right`,
    ),
  'named-late': (v, show) =>
    say(
      'Named after it had left',
      `Nobody was named while ${show.weight(v['grams'])} stood on the platform. Is it the weight of this animal?`,
      'it was this animal',
    ),
  'too-young': (v, show) =>
    say(
      'Too young',
      `It is ${show.number(v['days'])} days old; this rule is for ${show.number(v['least'])} days and more.`,
    ),
  'age-unknown': (v, show) =>
    say(
      'How old is it?',
      `This rule is not for animals under ${show.number(v['least'])} days, and its birth is not on record.`,
      'it is old enough',
    ),
  'too-light': (v, show) =>
    say(
      'Too light',
      `${show.weight(v['grams'])} on the platform; this rule begins at ${show.weight(v['leastGrams'])}.`,
      `it is over ${show.weight(v['leastGrams'])}`,
    ),
  'early-pregnancy': (v, show) =>
    say(
      'May be newly pregnant',
      v['bredAtMs'] === undefined
        ? `The males left her ${show.day(v['malesAtMs'])}. Not within ${show.number(v['days'])} days: it can harm the unborn.`
        : `Bred ${show.day(v['bredAtMs'])}. Not within ${show.number(v['days'])} days: it can harm the unborn.`,
    ),
  'breeding-unknown': (v, show) =>
    say(
      'Was she with a male?',
      `Not in the first ${show.number(v['days'])} days of pregnancy: it can harm the unborn. No mating is on record.`,
      'she is not newly bred',
    ),
  'not-in-milk': () =>
    say('Not for milk givers', 'People take her milk, and this rule leaves such animals out.'),
  'not-for-dairy': () =>
    say('Not for dairy females', 'Not even when dry: leave her out if her milk is ever for people.'),
  'conflict-given': (v, show) =>
    say(
      'Does not go with the last one',
      `It had an organophosphate ${show.day(v['lastGivenAtMs'])}. Not both within ${show.number(v['days'])} days: they make each other worse.`,
    ),
  'conflict-window': (v, show) =>
    say(
      'No organophosphate near it',
      `No organophosphate within ${show.number(v['days'])} days of it: dip, pour-on or collar.`,
    ),
  'milk-time-unknown': () =>
    say(
      'In milk: no safe time known',
      'No milk time is known for this rule. Ask the vet; keep its milk from people until then.',
      'keep the milk back',
    ),
  'milk-not-for-people': () =>
    say(
      'In milk: not for people',
      'After this medicine the milk of this animal is not for people.',
      'the milk is not used',
    ),
  'interval-crosses-ceiling': (v, show) =>
    say(
      'May be too much',
      `With scale and syringe as they are it may reach ${show.rate(v['high'])}; the limit is ${show.rate(v['ceiling'])}: a finer syringe or a weaker jug would help.`,
      'give it all the same',
    ),
  'interval-crosses-floor': (v, show) =>
    say(
      'May be too little',
      `With scale and syringe as they are it may be no more than ${show.rate(v['low'])}; below ${show.rate(v['floor'])} it breeds resistant worms.`,
      'give it all the same',
    ),
  'above-target': (v, show) =>
    say(
      'More than the target',
      `The nearest mark gives ${show.rate(v['value'])}; the target is ${show.rate(v['target'])}: a finer syringe would help.`,
      'give the larger dose',
    ),
  'below-target': (v, show) =>
    say(
      'Less than the target',
      `The nearest mark gives ${show.rate(v['value'])}; the target is ${show.rate(v['target'])}: too little breeds resistant worms.`,
      'give the smaller dose',
    ),
  'clock-untrusted': (v, show) =>
    say(
      'The clock is not set',
      `Ages cannot be known. Jug mixed ${show.when(v['mixedAtMs'])}; last dose of this medicine: ${
        v['lastGivenAtMs'] === undefined ? 'none written' : show.when(v['lastGivenAtMs'])
      }.`,
      'jug is fresh, dose is due',
    ),
  'scale-unchecked': (v, show) =>
    say(
      'Platform not checked',
      v['lastAtMs'] === undefined
        ? 'No check with a known weight is on record. Check it at Shed: ten minutes, one known weight.'
        : `Last checked with a known weight ${show.day(v['lastAtMs'])}, asked for every ${show.number(v['days'])} days.`,
      'weight as it is',
    ),
  'scale-check-failed': (v, show) =>
    v['failedAtMs'] === undefined
      ? say(
          'Scale check long overdue',
          `Last checked ${show.day(v['lastAtMs'])}, asked for every ${show.number(v['days'])} days. Check it at Shed.`,
          'weight as it is',
        )
      : say(
          'Scale check failed',
          `On ${show.day(v['failedAtMs'])} the platform was off by more than a scale may be. Have it mended, then check it again.`,
          'weight as it is',
        ),
  'test-resistant': (v, show) =>
    say(
      'Worms resist it here',
      `The test of ${show.localDate(v['testedAtMs'])} found it RESISTANT in this kind of animal: ${enReductionTest.change(v['reduction'] ?? 0, show)}. Ask the vet for another.`,
      'give it all the same',
    ),
  'test-low-resistant': (v, show) =>
    say(
      'Worms begin to resist it',
      `The test of ${show.localDate(v['testedAtMs'])} found LOW RESISTANT in this kind of animal: ${enReductionTest.change(v['reduction'] ?? 0, show)}.`,
    ),
  'extra-label': () =>
    say('Vet’s direction', 'Not on the label for this kind of animal: on the veterinarian’s word.', ''),
};
