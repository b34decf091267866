import type { MedicineView } from '../../shared/own-medicine.ts';
import type { RegimenView } from '../../shared/shed.ts';
import { figureShown } from '../shed/regimen-lines.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** A packet, a bottle or a rule of the farm's own, as it is shown. */
export interface OwnPart {
  readonly id: string;
  readonly kind: 'packet' | 'bottle' | 'rule';
  /** What it is, such as "Packet 52 g" or "Goat". */
  readonly name: string;
  /** Its figure. */
  readonly figure: string;
  /** Whether a rule is approved; `null` for what needs no approval. */
  readonly approved: boolean | null;
}

/** Everything of the farm's own that stands beside a medicine. */
export function ownParts(
  { presentations, ownRules }: MedicineView,
  regimens: readonly RegimenView[],
  words: Words,
  show: Show,
): OwnPart[] {
  const sold = presentations
    .filter(({ own }) => own)
    .map(({ id, form, grossGrams, activeGrams, strengthMgPerMl }): OwnPart => {
      if (form === 'liquid')
        return {
          id,
          kind: 'bottle',
          name: words.medicines.bottle,
          figure: show.strength(strengthMgPerMl),
          approved: null,
        };
      return {
        id,
        kind: 'packet',
        name: words.medicines.packet(show.packet(grossGrams ?? 0)),
        figure: words.medicines.active(show.packet(activeGrams ?? 0)),
        approved: null,
      };
    });
  const rules = regimens
    .filter(({ id }) => ownRules.includes(id))
    .map(({ id, species, use, figures, approval }): OwnPart => {
      const target = figures.find(({ label }) => label === 'target');
      return {
        id,
        kind: 'rule',
        name: words.medicines.ruleFor(words.species[species], words.medicines.use[use]),
        figure: target === undefined ? '' : figureShown(target, words, show),
        approved: approval !== null,
      };
    });
  return [...sold, ...rules];
}
