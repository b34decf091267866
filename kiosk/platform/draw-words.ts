import type { OfferView } from '../../shared/dose.ts';
import type { Show } from '../words/show.ts';
import type { FirstWords } from '../words/words.ts';

/** How to draw a dose that takes more than one filling, such as "2 × 4.7 mL + 4.6 mL". */
export function drawWords(
  { marksMl, syringeGraduationMl }: Pick<OfferView, 'marksMl' | 'syringeGraduationMl'>,
  words: FirstWords,
  show: Show,
): string {
  const each = [...new Set(marksMl)].map((mark) => {
    const draws = marksMl.filter((other) => other === mark).length;
    const shown = show.dose(mark, syringeGraduationMl);
    return draws > 1 ? words.platform.times(draws, shown) : shown;
  });
  return each.join(words.platform.and);
}
