import type { FigureView, RegimenView } from '../../shared/shed.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** One thing to read before a regimen is approved. */
export interface RegimenLine {
  readonly id: string;
  readonly label: string;
  /** The figure as shown; empty for a note. */
  readonly value: string;
  /** How well it is known; the note itself. */
  readonly evidence: string;
  /** Where the figure or note comes from. */
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
      text: words.shed.source(figure.source),
    };
  });
  const notes = [{ text: words.shed.use[regimen.use], source: '' }, ...regimen.notes].map(
    ({ text, source }, at) => ({
      id: `note-${at}`,
      label: words.shed.note,
      value: '',
      evidence: words.shipped(text),
      text: words.shed.source(source),
    }),
  );
  return [...figures, ...notes];
}

/** The days a veterinarian gave in place of a figure; `null` where the figure stands. */
function vetDays({ approval }: RegimenView, label: FigureView['label']): number | null {
  if (approval === null || (label !== 'meat' && label !== 'milk')) return null;
  const days = label === 'meat' ? approval.meatDays : approval.milkDays;
  const hours = label === 'meat' ? approval.meatHours : approval.milkHours;
  return days ?? (hours === null ? null : hours / HOURS_IN_DAY);
}

/** A figure of a regimen as it is shown; one that is not known says so, and never looks like zero. */
export function figureShown(figure: FigureView, words: Words, show: Show): string {
  if (figure.evidence === 'not-for-people') return words.shed.never;
  if (figure.value === null) return words.shed.notKnown;
  switch (figure.unit) {
    case 'mg/kg':
      return show.rate(figure.value);
    case 'days':
      return figure.value < 1
        ? words.shed.hours(show.number(HOURS_IN_DAY * figure.value, 1))
        : words.shed.days(show.number(figure.value, 1));
    case 'hours':
      return words.shed.hours(show.number(figure.value, 1));
    case 'kg':
      return show.weight(1000 * figure.value);
  }
}

/** The whole days a withdrawal keeps back at least; 0 where it has no time. */
export function wholeDays(figure: FigureView | undefined): number {
  if (figure === undefined || figure.value === null) return 0;
  return Math.ceil(figure.unit === 'hours' ? figure.value / HOURS_IN_DAY : figure.value);
}
