import type { DilutionView } from '../../shared/mixing.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** The figure of a dilution that a reason speaks of, as it is shown. */
function figureOf(choice: DilutionView, reason: NonNullable<DilutionView['reason']>, show: Show): string {
  switch (reason) {
    case 'measurable':
      return show.number(choice.measurable);
    case 'ceiling':
      return show.number(choice.crossing);
    case 'interval':
      return show.number(100 * (choice.worst ?? 0), 1);
    case 'draws':
      return show.number(choice.draws, 1);
    case 'jugs':
      return show.number(choice.jugs);
    default:
      return '';
  }
}

/** Why a choice stands where it stands, against the other one of its comparison, in numbers. */
export function reasonWords(
  choice: DilutionView,
  other: DilutionView | undefined,
  isBest: boolean,
  words: Words,
  show: Show,
): string {
  const { reason } = choice;
  if (reason === null || other === undefined) return '';
  const plain = isBest ? undefined : words.mixing.notBest[reason];
  return plain ?? words.mixing.reason[reason](figureOf(choice, reason, show), figureOf(other, reason, show));
}

/** How a dilution would serve the herd, one short line each. */
export function dilutionLines(choice: DilutionView, words: Words, show: Show): string[] {
  const { mixing } = words;
  if (choice.animals === 0) return [mixing.noHerd];
  const measured = mixing.measurable(choice.measurable, choice.animals, choice.guessed);
  if (choice.worst === null) return [measured, mixing.noSyringe];
  const needed = show.volume(choice.neededMl);
  const takes =
    choice.jugs > 1 ? mixing.takesJugs(needed, choice.jugs) : mixing.takes(needed, show.volume(choice.jugMl));
  return [
    measured,
    `${mixing.widest(show.number(100 * choice.worst, 1))}, ${mixing.drawsEach(show.number(choice.draws, 1))}`,
    choice.crossing > 0 ? `${takes}, ${mixing.crossing(choice.crossing)}` : takes,
  ];
}

/** The words for an amount of powder. */
export function amountWords(
  amount:
    | { readonly kind: 'packets'; readonly count: number }
    | { readonly kind: 'weighed'; readonly share: number },
  words: Words,
): string {
  if (amount.kind === 'packets') return words.mixing.packets(amount.count);
  return words.mixing.part[amount.share] ?? String(amount.share);
}
