import { DASH, type Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** As many as the keypad takes: a figure is shown as it was tapped. */
const DECIMALS = 7;

/** A number as it was tapped, with its unit. */
export interface Keyed {
  readonly count: number;
  readonly unit: string;
}

/** What was answered: one of the choices by its id, or a number. */
export type Answer = string | Keyed;

/** The answers so far, each by its question. */
export type Draft = Readonly<Record<string, Answer>>;

/** A tile to choose. */
export interface Choice {
  readonly id: string;
  readonly name: string;
  /** What it is called once chosen, where that is not its name. */
  readonly shown?: string;
}

/** A unit to end a number with, and the most that is taken in it. */
export interface Unit extends Choice {
  readonly most: number;
}

/** One question: a choice of tiles, or a number with its unit. */
export interface Question {
  readonly id: string;
  /** What the answer is called where all of them stand together. */
  readonly label: string;
  /** What is asked. */
  readonly title: string;
  /** Whether the answer shows in that of the next question anyway. */
  readonly quiet?: true;
  readonly ask:
    | { readonly kind: 'choose'; readonly choices: readonly Choice[] }
    | {
        readonly kind: 'key';
        readonly decimal: boolean;
        readonly units: readonly Unit[];
        /** What may be answered instead of a number. */
        readonly instead: readonly Choice[];
        /** Whether nothing may be tapped: a sentence of its own refuses it. */
        readonly zero?: true;
      };
}

/** Figures that cannot all be right. */
export interface Contradiction {
  /** The questions whose answers they are. */
  readonly between: readonly string[];
  /** The schema's own sentence. */
  readonly says: string;
}

/** Everything asked to enter one thing, and what it comes to. */
export interface Sheet<Entered> {
  /** The questions to put, in their order; which they are may follow from the answers. */
  questions(draft: Draft): readonly Question[];
  /** What contradicts itself so far. */
  contradiction(draft: Draft): Contradiction | null;
  /** What to look at twice before it is kept, or `null`. */
  warning(draft: Draft): string | null;
  /** What was entered, or `null` while an answer is missing. */
  entered(draft: Draft): Entered | null;
}

/** The number answered, where it was one. */
export function keyed(draft: Draft, id: string): Keyed | null {
  const answer = draft[id];
  return answer === undefined || typeof answer === 'string' ? null : answer;
}

/** The number answered to one of some questions in this unit; `null` where none was. */
export function keyedIn(draft: Draft, ids: readonly string[], unit: string): number | null {
  return ids.map((id) => keyed(draft, id)).find((answer) => answer?.unit === unit)?.count ?? null;
}

/** The choice answered, where it is one of these. */
export function chosen<Id extends string>(draft: Draft, id: string, among: readonly Id[]): Id | null {
  return among.find((each) => each === draft[id]) ?? null;
}

/** A number in the unit it is kept in, by what one of each unit comes to; `null` where none was answered. */
export function inUnit(draft: Draft, id: string, per: Readonly<Record<string, number>>): number | null {
  const answer = keyed(draft, id);
  return answer === null ? null : answer.count * (per[answer.unit] ?? 1);
}

/** The draft without one answer. */
export function without(draft: Draft, id: string): Draft {
  const { [id]: _, ...rest } = draft;
  return rest;
}

/** The question that begins an answer: a quiet one before it belongs to it. */
export function beginningOf(questions: readonly Question[], id: string): string {
  const before = questions[questions.findIndex((question) => question.id === id) - 1];
  return before?.quiet === true ? before.id : id;
}

/** The draft without answers to what is asked no more, or asked in another unit, since another answer changed. */
export function tidy(questions: readonly Question[], draft: Draft): Draft {
  const fits = questions.filter(({ id, ask }) => {
    const answer = draft[id];
    if (answer === undefined) return false;
    return (
      typeof answer === 'string' || (ask.kind === 'key' && ask.units.some((unit) => unit.id === answer.unit))
    );
  });
  return Object.fromEntries(fits.flatMap(({ id }) => (draft[id] === undefined ? [] : [[id, draft[id]]])));
}

/** The first question that has no answer. */
export function nextOf(questions: readonly Question[], draft: Draft): Question | undefined {
  return questions.find(({ id }) => draft[id] === undefined);
}

/** Why a number is more or less than is taken, or `null`. */
export function outOfRange(
  questions: readonly Question[],
  draft: Draft,
  id: string,
  words: Words,
  show: Show,
): Contradiction | null {
  const ask = questions.find((question) => question.id === id)?.ask;
  const answer = keyed(draft, id);
  if (ask?.kind !== 'key' || answer === null) return null;
  const most = ask.units.find((unit) => unit.id === answer.unit)?.most ?? 0;
  if ((answer.count > 0 || ask.zero === true) && answer.count <= most) return null;
  return { between: [id], says: words.medicines.outOfRange(show.number(most)) };
}

/** An answer as it is shown, in the words it was chosen by; a dash where there is none. */
export function shownAnswer({ ask }: Question, answer: Answer | undefined, words: Words, show: Show): string {
  if (answer === undefined) return DASH;
  if (typeof answer === 'string') {
    const choices = ask.kind === 'choose' ? ask.choices : ask.instead;
    const choice = choices.find(({ id }) => id === answer);
    return choice?.shown ?? choice?.name ?? answer;
  }
  const unit = ask.kind === 'key' ? ask.units.find(({ id }) => id === answer.unit) : undefined;
  return words.medicines.amount(show.number(answer.count, DECIMALS), unit?.name ?? answer.unit);
}
