import { grams, massIn } from '../../core/quantity/mass.ts';
import type { OfferView } from '../../shared/dose.ts';
import type { DoseCardView } from '../../shared/dose-card.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** The figures of the card, each of which can be asked where it comes from. */
export const CARD_FIGURES = ['weight', 'rate', 'limits', 'strength', 'volume'] as const;
/** One of {@link CARD_FIGURES}. */
export type CardFigure = (typeof CARD_FIGURES)[number];

/** A figure as its plate shows it, and the lines that say where it comes from. */
export interface FigureWords {
  readonly title: string;
  readonly value: string;
  /** How far it may be off; empty for what has no doubt of its own. */
  readonly off: string;
  readonly sources: readonly string[];
}

/** The part of the doubt that belongs to a figure. */
function partOf(card: DoseCardView, figure: CardFigure): DoseCardView['parts'][number] | undefined {
  return card.parts.find(({ of }) => of === (figure === 'volume' ? 'syringe' : figure));
}

/** Whether a figure is to blame for most of the doubt. */
export function leads(card: DoseCardView, figure: CardFigure): boolean {
  return partOf(card, figure)?.of === card.leads;
}

/** What a figure of the card says of itself. */
export function figureWords(
  figure: CardFigure,
  offer: OfferView,
  card: DoseCardView,
  words: Words,
  show: Show,
): FigureWords {
  const { doseCard: say, shed } = words;
  const part = partOf(card, figure);
  const percent = part === undefined ? '' : say.percent(show.number(100 * part.off, 1));
  const moves = part === undefined || part.moves === 0 ? [] : [say.moves(show.rate(part.moves))];
  const title = say.figure[figure];
  const kilograms = `${show.number(massIn(grams(offer.weightGrams), 'kg'), 2)} kg`;
  switch (figure) {
    case 'weight': {
      const off = show.weight(2 * offer.weightUncertaintyGrams);
      return {
        title,
        value: show.weight(offer.weightGrams),
        off: say.off(off),
        sources: [say.weighedAt(show.time(offer.weighedAt)), say.known(off), say.weightFrom, ...moves],
      };
    }
    case 'rate':
      return {
        title,
        value: show.rate(card.target.value ?? undefined),
        off: '',
        sources: [
          say.rateFrom(shed.evidence[card.target.evidence]),
          shed.source(card.target.source),
          `${shed.approvedBy(card.approved.by, show.day(card.approved.at))}, ${wordOf(card.approved, shed)}.`,
        ],
      };
    case 'limits': {
      const { ceiling, floor } = card;
      const below =
        floor.value === null
          ? say.noFloor
          : say.floorFrom(show.rate(floor.value), shed.evidence[floor.evidence]);
      return {
        title,
        value: show.rate(ceiling.value ?? undefined),
        off: '',
        sources: [
          say.ceilingFrom(show.rate(ceiling.value ?? undefined), shed.evidence[ceiling.evidence]),
          shed.source(ceiling.source),
          `${below.charAt(0).toUpperCase()}${below.slice(1)}`,
          shed.source(floor.source),
        ],
      };
    }
    case 'strength': {
      const { at, by, volumeMl, source } = card.mixed;
      return {
        title,
        value: show.strength(offer.strengthMgPerMl),
        off: say.off(percent),
        sources: [
          say.mixed(offer.jugNumber, show.when(at), by, show.volume(volumeMl)),
          say.known(percent),
          ...(source === null ? [] : [say.activeFrom(shed.source(source))]),
          ...moves,
        ],
      };
    }
    case 'volume': {
      const mark = (ml: number): string => show.dose(ml, offer.syringeGraduationMl);
      return {
        title,
        value: mark(offer.volumeMl),
        off: say.off(percent),
        sources: [
          say.sum(
            show.rate(offer.targetMgPerKg),
            kilograms,
            show.strength(offer.strengthMgPerMl),
            show.exact(offer.exactVolumeMl),
          ),
          say.mark(mark(offer.volumeMl), mark(offer.syringeGraduationMl), words.shipped(offer.syringeName)),
          say.tolerance[card.tolerance],
          ...moves,
        ],
      };
    }
  }
}

/** On whose word a rule was approved. */
function wordOf({ direction, vet }: DoseCardView['approved'], shed: Words['shed']): string {
  if (direction === 'label') return shed.onLabel;
  return vet === null ? shed.onVet : shed.onVetNamed(vet);
}

/** The advice of a card, as sentences, best first. */
export function adviceLines(card: DoseCardView, words: Words, show: Show): string[] {
  if (card.advice.length === 0) return [words.doseCard.noAdvice];
  return card.advice.map(({ change, volumeMl, syringeGraduationMl, syringeName, deliveredMgPerKg }) => {
    const { low, high } = deliveredMgPerKg;
    return words.doseCard.advice[change](
      show.dose(volumeMl, syringeGraduationMl),
      show.number(low, 1),
      show.rate(high),
      words.shipped(syringeName),
    );
  });
}
