import type { AgainstMob } from '../growth/mob.ts';
import type { Animal } from '../herd/animal.ts';
import { DAY_MS } from '../moment.ts';
import type { Scores } from './scores.ts';
import {
  type ClassRules,
  hasEyelidScore,
  type Threshold,
  type TreatRules,
  type WormSeason,
} from './treat-rules.ts';

/** What to do with an animal today. */
export type Advice = 'treat' | 'leave' | 'look-again';

/** What was seen, as a code the catalogue has words for. */
export type SignCode =
  | 'jaw-swollen'
  | 'eyelid-pale'
  | 'eyelid-middling'
  | 'eyelid-red'
  | 'eyelid-recovering'
  | 'thin'
  | 'body-fit'
  | 'soiled'
  | 'clean'
  | 'coat-rough'
  | 'coat-smooth'
  | 'behind-the-mob'
  | 'with-the-mob'
  | 'jaw-sound'
  | 'not-scored'
  | 'eyelid-alone';

/** One reason: a sign, which way it speaks, and where the rule comes from. */
export interface Reason {
  readonly sign: SignCode;
  readonly speaksFor: Advice;
  readonly source: string;
}

/** The advice for one animal with all its reasons, those that decided first. */
export interface TreatAdvice {
  readonly animalId: string;
  readonly advice: Advice;
  readonly reasons: readonly Reason[];
  /** When to look again, milliseconds since 1970. */
  readonly lookAgainAtMs: number;
}

/** What is known of an animal when it is judged. */
export interface Signs {
  readonly animal: Pick<Animal, 'id' | 'species' | 'class'>;
  /** Newest scores that still count; see `latestScores`. */
  readonly scores: Scores | null;
  readonly gain: AgainstMob | null;
  /** When it last had a dose against worms; `null` for never. */
  readonly lastDoseAtMs: number | null;
}

/**
 * Whom to treat, by the farm's rules.
 *
 * Any sign that speaks for treating treats. A middling eyelid with one more doubtful sign treats too, since a 3
 * "depends on other signs". Any other doubtful sign asks for another look. Leaving needs the eyelid and at least one
 * other sign, all sound: colour alone has missed up to 78 of 100 anaemic goats, so it never says that none is needed.
 */
export function adviseTreatment(
  signs: Signs,
  rules: TreatRules,
  season: WormSeason,
  wallMs: number,
): TreatAdvice {
  const own = rules.byClass[season][signs.animal.class];
  const found = [
    ...(signs.scores === null ? [] : reasonsOf(signs, signs.scores, own, rules, wallMs)),
    ...gainReason(signs.gain, own),
  ];
  const seen: Reason[] = found.length === 0 ? [NOT_SCORED] : found;
  const { advice, added } = weigh(seen);
  const order = (reason: Reason): number => (reason.speaksFor === advice ? 0 : 1);
  return {
    animalId: signs.animal.id,
    advice,
    reasons: [...seen, ...added].sort((a, b) => order(a) - order(b)),
    lookAgainAtMs: wallMs + own.lookAgainDays.value * DAY_MS,
  };
}

const OWN = 'Set by this project; no source gives one';
const FIVE_POINTS = 'Five point check, sheep101.info/5ptcheck';
const NOT_SCORED: Reason = { sign: 'not-scored', speaksFor: 'look-again', source: OWN };
const EYELID_ALONE: Reason = {
  sign: 'eyelid-alone',
  speaksFor: 'look-again',
  source: 'Glaji 2014 and others: sensitivity of 22 to 100 % by farm',
};

function weigh(seen: readonly Reason[]): { advice: Advice; added: readonly Reason[] } {
  if (seen.some(({ speaksFor }) => speaksFor === 'treat')) return { advice: 'treat', added: [] };
  const doubtful = seen.filter(({ speaksFor }) => speaksFor === 'look-again');
  const middling = doubtful.some(({ sign }) => sign === 'eyelid-middling');
  if (middling && doubtful.length > 1) return { advice: 'treat', added: [] };
  if (doubtful.length > 0) return { advice: 'look-again', added: [] };
  const others = seen.filter(({ sign }) => sign !== 'eyelid-red' && sign !== 'jaw-sound');
  return others.length > 0 ? { advice: 'leave', added: [] } : { advice: 'look-again', added: [EYELID_ALONE] };
}

function reasonsOf(
  { animal, lastDoseAtMs }: Signs,
  scores: Scores,
  own: ClassRules,
  rules: TreatRules,
  wallMs: number,
): Reason[] {
  const recovering = lastDoseAtMs !== null && wallMs - lastDoseAtMs < rules.colourRecoveryDays.value * DAY_MS;
  return [
    ...jawReason(scores),
    ...(hasEyelidScore(animal.species) ? eyelidReason(scores, own, recovering, rules) : []),
    ...bodyReason(scores, own),
    ...soilingReason(scores, own),
    ...coatReason(scores),
  ];
}

/** A swollen jaw treats; a sound one says little, since most animals with worms never show it. */
function jawReason({ jaw }: Scores): Reason[] {
  if (jaw === null) return [];
  return [
    jaw === 'swollen'
      ? { sign: 'jaw-swollen', speaksFor: 'treat', source: FIVE_POINTS }
      : { sign: 'jaw-sound', speaksFor: 'leave', source: FIVE_POINTS },
  ];
}

function eyelidReason(
  { eyelid }: Scores,
  { treatEyelid }: ClassRules,
  recovering: boolean,
  rules: TreatRules,
): Reason[] {
  if (eyelid === null) return [];
  if (eyelid >= treatEyelid.value) {
    return recovering
      ? [{ sign: 'eyelid-recovering', speaksFor: 'look-again', source: rules.colourRecoveryDays.source }]
      : [decided('eyelid-pale', 'treat', treatEyelid)];
  }
  // One step short of treating is the score that depends on the other signs.
  return eyelid >= 3
    ? [
        {
          sign: 'eyelid-middling',
          speaksFor: 'look-again',
          source: `${FIVE_POINTS}: 3 depends on other signs`,
        },
      ]
    : [{ sign: 'eyelid-red', speaksFor: 'leave', source: `${FIVE_POINTS}: 1 and 2 normally not treated` }];
}

function bodyReason({ body }: Scores, { treatBody }: ClassRules): Reason[] {
  if (body === null) return [];
  return [
    body <= treatBody.value ? decided('thin', 'treat', treatBody) : decided('body-fit', 'leave', treatBody),
  ];
}

function soilingReason({ soiling }: Scores, { lookSoiling }: ClassRules): Reason[] {
  if (soiling === null) return [];
  return [
    soiling >= lookSoiling.value
      ? decided('soiled', 'look-again', lookSoiling)
      : decided('clean', 'leave', lookSoiling),
  ];
}

function coatReason({ coat }: Scores): Reason[] {
  if (coat === null) return [];
  return [
    coat === 'rough'
      ? { sign: 'coat-rough', speaksFor: 'look-again', source: FIVE_POINTS }
      : { sign: 'coat-smooth', speaksFor: 'leave', source: FIVE_POINTS },
  ];
}

function gainReason(gain: AgainstMob | null, { gainShare }: ClassRules): Reason[] {
  if (gain === null) return [];
  return [
    gain.standing === 'behind'
      ? decided('behind-the-mob', 'look-again', gainShare)
      : decided('with-the-mob', 'leave', gainShare),
  ];
}

/** A threshold without a source may ask for another look, and never treats. */
function decided(sign: SignCode, speaksFor: Advice, { evidence, source }: Threshold<number>): Reason {
  const weakened = speaksFor === 'treat' && evidence === 'no-source' ? 'look-again' : speaksFor;
  return { sign, speaksFor: weakened, source };
}
