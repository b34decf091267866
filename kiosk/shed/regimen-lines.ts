import type { FigureView, RegimenView } from '../../shared/shed.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** One thing to read before a regimen is approved. */
export interface RegimenLine {
  readonly id: string;
  readonly label: string;
  /** The figure as shown; empty for a note. */
  readonly value: string;
  /** How well it is known; empty for a note. */
  readonly evidence: string;
  /** Where the figure comes from, or the note itself. */
  readonly text: string;
}

const HOURS_IN_DAY = 24;

/** Everything to read before a regimen is approved: each figure with its source, then the notes. */
export function regimenLines(regimen: RegimenView, words: Words, show: Show): RegimenLine[] {
  const figures = regimen.figures.map((figure) => {
    const days = vetDays(regimen, figure.label);
    const shipped = figureShown(figure, words, show);
    return {
      id: figure.label,
      label: words.shed.figure[figure.label],
      value: days === null ? shipped : words.shed.vetSays(words.shed.days(show.number(days, 1))),
      evidence:
        days === null
          ? words.shed.evidence[figure.evidence]
          : words.shed.ruleSays(shipped, words.shed.evidence[figure.evidence]),
      text: figure.source,
    };
  });
  const notes = [words.shed.use[regimen.use], ...regimen.notes].map((text, at) => ({
    id: `note-${at}`,
    label: words.shed.note,
    value: '',
    evidence: '',
    text,
  }));
  return [...figures, ...notes];
}

/** The days a veterinarian gave in place of a figure; `null` where the figure stands. */
function vetDays({ approval }: RegimenView, label: FigureView['label']): number | null {
  const hours = label === 'meat' ? approval?.meatHours : label === 'milk' ? approval?.milkHours : null;
  return hours == null ? null : hours / HOURS_IN_DAY;
}

/** A figure of a regimen as it is shown; one that is not known says so, and never looks like zero. */
export function figureShown(figure: FigureView, words: Words, show: Show): string {
  if (figure.evidence === 'not-for-people') return words.shed.never;
  if (figure.value === null) return words.shed.notKnown;
  switch (figure.label) {
    case 'target':
    case 'ceiling':
    case 'floor':
      return show.rate(figure.value);
    case 'repeat':
      return words.shed.days(show.number(figure.value, 1));
    case 'meat':
    case 'milk':
      return words.shed.days(show.number(figure.value / HOURS_IN_DAY, 1));
  }
}
