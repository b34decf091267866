import type { Group } from '../medicine/medicine.ts';
import { DAY_MS } from '../moment.ts';

/** The days after the dose on which the second samples are taken, and how well that is known. */
export interface RetestWindow {
  readonly fromDay: number;
  readonly bestDay: number;
  readonly untilDay: number;
  /** `published` where a source read gives these days, `from-memory` where a part of them is only remembered. */
  readonly evidence: 'published' | 'from-memory';
  readonly source: string;
}

const ANY: RetestWindow = {
  fromDay: 10,
  bestDay: 14,
  untilDay: 14,
  evidence: 'published',
  source: '10 to 12 days: parasite.com.au; 14 days: Bosco 2020, PMC7487796',
};

/**
 * The window of a chemical group: inside what was read wherever the remembered days of the group lie there.
 *
 * From memory of Coles 2006: levamisole 3 to 7 days, benzimidazoles 8 to 10, macrocyclic lactones 14 to 17. Read: 7 to
 * 14 (a university extension page), 10 to 12, 14.
 */
const WINDOWS: Partial<Readonly<Record<Group, RetestWindow>>> = {
  imidazothiazole: {
    fromDay: 7,
    bestDay: 10,
    untilDay: 14,
    evidence: 'published',
    source: '7 to 14 days: a university extension page; 10 to 12: parasite.com.au',
  },
  benzimidazole: { ...ANY, bestDay: 10 },
  'macrocyclic-lactone': {
    fromDay: 14,
    bestDay: 14,
    untilDay: 17,
    evidence: 'from-memory',
    source: '14 days: Bosco 2020, PMC7487796; up to 17 from memory, no source read',
  },
};

/** The window for a medicine of a group; the widest one read where nothing tells of the group. */
export function retestWindow(group: Group | null): RetestWindow {
  return (group === null ? undefined : WINDOWS[group]) ?? ANY;
}

/** When the second samples are due, milliseconds since 1970. */
export interface RetestDays {
  readonly fromMs: number;
  readonly bestMs: number;
  readonly untilMs: number;
}

/** The window after a dose. */
export function retestDays({ fromDay, bestDay, untilDay }: RetestWindow, treatedAtMs: number): RetestDays {
  const after = (days: number): number => treatedAtMs + days * DAY_MS;
  return { fromMs: after(fromDay), bestMs: after(bestDay), untilMs: after(untilDay) };
}

/** Whole days from the dose to a sample: samples are dated by the day. */
export function daysAfter(givenAtMs: number, sampledAtMs: number): number {
  return Math.round((sampledAtMs - givenAtMs) / DAY_MS);
}
