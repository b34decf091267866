import type { Species } from '../herd/animal.ts';
import { type HerdAnimal, isPresent } from '../herd/herd-animal.ts';
import { sameNumber } from '../herd/numbers.ts';
import { type Columns, columnsOf } from './columns.ts';
import type { DateOrder } from './date.ts';
import { type Draft, faultIn, type ReadingRules, type RowFault, readRow } from './row.ts';

/** One row of a file as its parser gives it. */
export interface FileRow {
  /** Line of the file it begins on, from 1: a quoted cell may hold line ends. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** What is said about the file beside its rows. */
export interface FileRules {
  readonly dateOrder: DateOrder;
  /** The species of rows that name none; `null` makes each row name its own. */
  readonly species: Species | null;
  readonly wallMs: number;
  /** Animals the kiosk knows already. */
  readonly herd: readonly HerdAnimal[];
}

/** What a file would bring. Nothing is written until it is accepted, and then all good rows or none. */
export interface HerdPreview {
  readonly ok: true;
  readonly good: readonly Draft[];
  /** Every bad cell, by line and column. */
  readonly faults: readonly RowFault[];
  /** Rows read, good and bad; empty lines are not counted. */
  readonly rows: number;
  /** Headings that were not understood: their cells are left out. */
  readonly unknownColumns: readonly string[];
  /** Whether weights were written in more than one unit: each was converted by its own, and the keeper should look. */
  readonly unitsMixed: boolean;
}

/** A preview, or why the file has none. */
export type PreviewResult =
  | HerdPreview
  | {
      readonly ok: false;
      readonly why: 'empty' | 'no-name-column' | 'column-twice';
      readonly heading: string | null;
    };

/**
 * Reads a herd file as a preview: every good row as an animal to be, every bad cell named by line and column.
 *
 * A tag or a name that stands in the file twice keeps out the later row, and one the herd has already keeps out the row.
 */
export function previewHerd(rows: Iterable<FileRow>, rules: FileRules): PreviewResult {
  const steps = previewInSteps(rows, rules);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** Rows judged between two steps: few enough that nobody waits for them. */
const ROWS_A_STEP = 250;

/** The same preview a few rows at a time, for whoever has other work to do between. */
export function* previewInSteps(
  rows: Iterable<FileRow>,
  rules: FileRules,
): Generator<undefined, PreviewResult> {
  const [heading, ...rest] = rows;
  if (heading === undefined) return { ok: false, why: 'empty', heading: null };
  const found = columnsOf(heading.cells);
  if (!found.ok) return found;
  const { columns } = found;
  const reading: ReadingRules = { ...rules, columns };
  const taken = takenIn(rules.herd);
  const good: Draft[] = [];
  const faults: RowFault[] = [];
  let filled = 0;
  for (const [at, { line, cells }] of rest.entries()) {
    if (at % ROWS_A_STEP === ROWS_A_STEP - 1) yield undefined;
    if (cells.every((cell) => cell.trim() === '')) continue;
    filled += 1;
    const { draft, faults: own } = readRow(line, cells, reading);
    const clashes = draft === null ? [] : clashesOf(draft, columns, taken);
    for (const fault of [...own, ...clashes]) faults.push(fault);
    if (draft === null || clashes.length > 0) continue;
    take(draft, taken);
    good.push(draft);
  }
  const units = new Set(good.flatMap(({ weightUnit }) => weightUnit ?? []));
  return {
    ok: true,
    good,
    faults,
    rows: filled,
    unknownColumns: columns.unknown,
    unitsMixed: units.size > 1,
  };
}

/** Who has a number already: a line of the file, or an animal of the herd. */
type Holder = { readonly in: 'file' | 'herd'; readonly as: string };

interface Taken {
  readonly tags: Map<string, Holder>;
  readonly names: Map<string, Holder>;
}

function takenIn(herd: readonly HerdAnimal[]): Taken {
  const taken: Taken = { tags: new Map(), names: new Map() };
  for (const animal of herd.filter(isPresent)) {
    const holder: Holder = { in: 'herd', as: animal.name };
    if (animal.tag !== null) taken.tags.set(animal.tag, holder);
    taken.names.set(sameNumber(animal.name), holder);
  }
  return taken;
}

function take({ line, animal }: Draft, { tags, names }: Taken): void {
  const holder: Holder = { in: 'file', as: String(line) };
  if (animal.tag !== null) tags.set(animal.tag, holder);
  names.set(sameNumber(animal.name), holder);
}

function clashesOf(draft: Draft, columns: Columns, { tags, names }: Taken): RowFault[] {
  const byTag = draft.animal.tag === null ? undefined : tags.get(draft.animal.tag);
  const byName = names.get(sameNumber(draft.animal.name));
  return [
    ...(byTag === undefined ? [] : [faultIn(draft, columns, 'tag', `tag-in-${byTag.in}`, byTag.as)]),
    ...(byName === undefined ? [] : [faultIn(draft, columns, 'name', `name-in-${byName.in}`, byName.as)]),
  ];
}
