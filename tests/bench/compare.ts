import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';
import type { KeptFigure } from './table.ts';

const Run = z.array(
  z.strictObject({
    title: z.string(),
    what: z.string(),
    ratio: z.number().nullable(),
    against: z.string(),
    raw: z.string(),
  }),
);

/** A figure of two runs. */
export interface ComparedFigure {
  readonly title: string;
  readonly what: string;
  /** Its ratio in the other run, and in this one; `null` where it was not measured. */
  readonly before: number | null;
  readonly now: number | null;
  readonly became: 'the same' | 'more' | 'less' | 'new' | 'gone';
}

/** Ratios of two runs on one machine part by so much with nothing changed (seen here, our own measure). */
const ALIKE = 1.15;

/** Writes the figures of a run to a file as JSON. */
export function writeRun(path: string, figures: readonly KeptFigure[]): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `${JSON.stringify(figures, null, 2)}\n`);
}

/** Reads the figures of a run. Throws where the file is none. */
export function readRun(path: string): z.infer<typeof Run> {
  return Run.parse(JSON.parse(readFileSync(path, 'utf8')));
}

/**
 * Holds a run against another, figure by figure: those of this run in their order, then those it has not. Figures of tables
 * that this run did not measure are left out.
 */
export function comparedWith(
  before: z.infer<typeof Run>,
  now: readonly Pick<KeptFigure, 'title' | 'what' | 'ratio'>[],
): ComparedFigure[] {
  const is = (one: { title: string; what: string }) => `${one.title}: ${one.what}`;
  const known = new Map(before.map((figure) => [is(figure), figure.ratio]));
  const here = now.map((figure): ComparedFigure => {
    const { title, what, ratio } = figure;
    const was = known.get(is(figure)) ?? null;
    return { title, what, before: was, now: ratio, became: becameOf(was, ratio) };
  });
  const measured = new Set(now.map(({ title }) => title));
  const found = new Set(now.map(is));
  const gone = before.filter((figure) => measured.has(figure.title) && !found.has(is(figure)));
  return [
    ...here,
    ...gone.map(({ title, what, ratio }) => ({
      title,
      what,
      before: ratio,
      now: null,
      became: 'gone' as const,
    })),
  ];
}

function becameOf(was: number | null, is: number): ComparedFigure['became'] {
  if (was === null) return 'new';
  if (is > was * ALIKE) return 'more';
  return is * ALIKE < was ? 'less' : 'the same';
}
