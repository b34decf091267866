import type { MassUnit } from '../quantity/mass.ts';
import { unitNamed } from './weight.ts';

/** What a column of a herd file can hold. */
export type Field =
  | 'name'
  | 'species'
  | 'class'
  | 'born'
  | 'tag'
  | 'visual-tag'
  | 'pen'
  | 'mark'
  | 'bred'
  | 'kidded'
  | 'in-milk-since'
  | 'weight'
  | 'weight-unit'
  | 'weighed';

/** The columns of one file: where each field stands, and as what it is headed. */
export interface Columns {
  readonly at: ReadonlyMap<Field, { readonly index: number; readonly heading: string }>;
  /** The unit the heading of the weight names; `null` where it names none. */
  readonly weightUnit: MassUnit | null;
  /** Headings nobody knows; their cells are left out. */
  readonly unknown: readonly string[];
}

/** Columns, or why the first line is no heading. */
export type ColumnsResult =
  | { readonly ok: true; readonly columns: Columns }
  | { readonly ok: false; readonly why: 'no-name-column' | 'column-twice'; readonly heading: string | null };

const HEADINGS: Readonly<Record<Field, readonly string[]>> = {
  name: ['name', 'animal', 'number', 'id'],
  species: ['species', 'kind'],
  class: ['class', 'sex', 'gender'],
  born: ['born', 'birth', 'birth date', 'date of birth', 'dob'],
  tag: ['tag', 'electronic tag', 'eid', 'rfid'],
  'visual-tag': ['visual tag', 'ear tag', 'eartag'],
  pen: ['pen', 'group', 'mob'],
  mark: ['mark', 'colour mark', 'color mark'],
  bred: ['bred', 'breeding date', 'service date'],
  kidded: ['kidded', 'lambed', 'calved', 'last birth'],
  'in-milk-since': ['in milk since', 'fresh', 'fresh date'],
  weight: ['weight'],
  'weight-unit': ['weight unit', 'unit'],
  weighed: ['weighed', 'weight date', 'weighing date', 'weighed on'],
};
const FIELDS: ReadonlyMap<string, Field> = new Map(
  (Object.keys(HEADINGS) as Field[]).flatMap((field) =>
    HEADINGS[field].map((word) => [word, field] as const),
  ),
);
const WITH_UNIT = /^weight[ (]+(g|kg|lb|lbs|oz)\)?$/;
/** A heading longer than this is none. */
const LONGEST_HEADING = 60;

/** Reads the first line of a herd file. Capitals, blanks, dashes and underscores in headings do not matter. */
export function columnsOf(cells: readonly string[]): ColumnsResult {
  const at = new Map<Field, { index: number; heading: string }>();
  const unknown: string[] = [];
  let weightUnit: MassUnit | null = null;
  for (const [index, cell] of cells.entries()) {
    const heading = cell.slice(0, LONGEST_HEADING).trim();
    const plain = heading
      .replace(/^\uFEFF/, '')
      .toLowerCase()
      .replace(/[\s_-]+/g, ' ')
      .trim();
    const unit = WITH_UNIT.exec(plain)?.[1];
    const field = unit === undefined ? FIELDS.get(plain) : 'weight';
    if (field === undefined) {
      if (plain !== '') unknown.push(heading);
      continue;
    }
    if (at.has(field)) return { ok: false, why: 'column-twice', heading };
    if (unit !== undefined) weightUnit = unitNamed(unit);
    at.set(field, { index, heading });
  }
  if (!at.has('name')) return { ok: false, why: 'no-name-column', heading: null };
  return { ok: true, columns: { at, weightUnit, unknown } };
}
