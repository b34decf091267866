import type { AnimalClass, Species } from '../herd/animal.ts';
import type { HerdAnimal } from '../herd/herd-animal.ts';
import { doubtOf, type WeightDoubt } from '../herd/plausible.ts';
import { checkTag, type TagRefusal } from '../herd/tag.ts';
import type { Mass } from '../quantity/mass.ts';
import type { Columns, Field } from './columns.ts';
import { type DateFault, type DateOrder, dateCell } from './date.ts';
import { type TextFault, textCell } from './text.ts';
import { unitNamed, type WeightFault, weightCell } from './weight.ts';

/** Why a cell of a herd file is refused. */
export type CellFault =
  | TextFault
  | DateFault
  | WeightFault
  | TagRefusal
  | Exclude<WeightDoubt, 'far-from-last' | 'pounds-for-kilograms'>
  | 'missing'
  | 'not-a-species'
  | 'not-a-class'
  | 'not-a-unit'
  | 'spoilt-by-spreadsheet'
  | 'before-birth'
  | 'weight-without-day'
  | 'tag-in-file'
  | 'tag-in-herd'
  | 'name-in-file'
  | 'name-in-herd';

/** A cell that keeps its row out: where it stands, what is wrong, and the beginning of what it says. */
export interface RowFault {
  /** Line of the file the row begins on, from 1. */
  readonly line: number;
  readonly field: Field;
  /** The heading of its column; `null` where the file has no such column. */
  readonly heading: string | null;
  readonly why: CellFault;
  /** At most 40 characters. */
  readonly value: string;
  /** The line, or the animal's name, that has the number already. */
  readonly already: string | null;
}

/** An animal as a row tells it; it has no id until it is accepted. */
export type NewAnimal = Omit<HerdAnimal, 'id'>;

/** A row that may become an animal. */
export interface Draft {
  readonly line: number;
  readonly animal: NewAnimal;
  /** The unit its weight was written in. */
  readonly weightUnit: string | null;
}

/** What reading a row needs to know. */
export interface ReadingRules {
  readonly columns: Columns;
  readonly dateOrder: DateOrder;
  /** The species of rows that name none. */
  readonly species: Species | null;
  readonly wallMs: number;
}

const SPECIES_WORDS: Readonly<Record<string, Species>> = {
  goat: 'goat',
  goats: 'goat',
  sheep: 'sheep',
  cattle: 'cattle',
  cow: 'cattle',
  calf: 'cattle',
};
const CLASS_WORDS: Readonly<Record<string, AnimalClass>> = {
  female: 'female',
  f: 'female',
  doe: 'female',
  ewe: 'female',
  cow: 'female',
  male: 'male',
  m: 'male',
  buck: 'male',
  ram: 'male',
  bull: 'male',
  castrate: 'castrate',
  wether: 'castrate',
  steer: 'castrate',
  young: 'young',
  kid: 'young',
  lamb: 'young',
  calf: 'young',
};
const LONGEST = { name: 40, tag: 30, pen: 30, mark: 30 } as const;
const SHOWN = 40;

/** Reads one row. All its faults are told, not the first alone. */
export function readRow(
  line: number,
  cells: readonly string[],
  rules: ReadingRules,
): { readonly draft: Draft | null; readonly faults: readonly RowFault[] } {
  const faults: RowFault[] = [];
  const cell = (field: Field): string => cells[rules.columns.at.get(field)?.index ?? -1] ?? '';
  const fault = (field: Field, why: CellFault): null => {
    const heading = rules.columns.at.get(field)?.heading ?? null;
    faults.push({ line, field, heading, why, value: cell(field).slice(0, SHOWN), already: null });
    return null;
  };
  const text = (field: Field, longest: number): string | null => {
    const read = textCell(cell(field), longest);
    return read.ok ? read.text : fault(field, read.why);
  };
  const day = (field: Field): number | null => {
    const read = dateCell(cell(field), rules.dateOrder, rules.wallMs);
    return read.ok ? read.atMs : fault(field, read.why);
  };
  const word = <T>(field: Field, words: Readonly<Record<string, T>>, why: CellFault): T | null => {
    const said = text(field, LONGEST.pen)?.toLowerCase();
    return said === undefined ? null : (words[said] ?? fault(field, why));
  };

  const name = text('name', LONGEST.name);
  if (name === null && !faults.some(({ field }) => field === 'name')) fault('name', 'missing');
  const species = word('species', SPECIES_WORDS, 'not-a-species') ?? rules.species;
  if (species === null && !faults.some(({ field }) => field === 'species')) fault('species', 'missing');
  const kind = word('class', CLASS_WORDS, 'not-a-class');
  if (kind === null && !faults.some(({ field }) => field === 'class')) fault('class', 'missing');
  const tag = tagOf(cell('tag'), (why) => fault('tag', why));
  const visual = text('visual-tag', LONGEST.tag);
  const [pen, mark] = [text('pen', LONGEST.pen), text('mark', LONGEST.mark)];
  const [born, weighed] = [day('born'), day('weighed')];
  const later = (field: Field): number | null => {
    const atMs = day(field);
    return atMs !== null && born !== null && atMs < born ? fault(field, 'before-birth') : atMs;
  };
  const [bred, kidded, inMilkSince] = [later('bred'), later('kidded'), later('in-milk-since')];
  const found = weightOf(cell('weight'), cell('weight-unit'), rules, fault);
  if (found !== null && weighed === null && !faults.some(({ field }) => field === 'weighed')) {
    fault('weighed', 'weight-without-day');
  }
  if (found !== null && species !== null && kind !== null && isBeyond(found.mass, species, kind)) {
    fault('weight', 'outside-species');
  }
  if (faults.length > 0 || name === null || species === null || kind === null) return { draft: null, faults };
  const animal: NewAnimal = {
    name,
    species,
    class: kind,
    tag,
    inMilk: inMilkSince !== null,
    bredAtMs: bred,
    malesRemovedAtMs: null,
    lastWeight: found !== null && weighed !== null ? { mass: found.mass, atMs: weighed } : null,
    bornAtMs: born,
    visualTags: visual === null ? [] : [visual],
    formerTags: [],
    pen,
    mark,
    photo: null,
    kiddedAtMs: kidded,
    inMilkSinceMs: inMilkSince,
    life: { kind: 'present' },
  };
  return { draft: { line, animal, weightUnit: found?.unit ?? null }, faults };
}

/** A fault of one cell that also keeps a finished row out. */
export function faultIn(
  draft: Draft,
  columns: Columns,
  field: 'tag' | 'name',
  why: CellFault,
  already: string,
): RowFault {
  const value = (field === 'tag' ? draft.animal.tag : draft.animal.name) ?? '';
  const heading = columns.at.get(field)?.heading ?? null;
  return { line: draft.line, field, heading, why, value: value.slice(0, SHOWN), already };
}

function tagOf(cell: string, fault: (why: CellFault) => null): string | null {
  if (cell.length > SHOWN) return fault('too-long');
  const digits = cell.replace(/[\s'-]/g, '');
  if (digits === '') return null;
  // A spreadsheet that took the tag for a number has lost its last digits: 8.40003E+14.
  if (/^\d[.,]?\d*E\+?\d+$/i.test(digits)) return fault('spoilt-by-spreadsheet');
  const checked = checkTag(digits);
  return checked.ok ? checked.tag : fault(checked.why);
}

function weightOf(
  cell: string,
  unitWord: string,
  { columns }: ReadingRules,
  fault: (field: Field, why: CellFault) => null,
): { readonly mass: Mass; readonly unit: string } | null {
  const named = unitWord.trim() === '' ? null : unitNamed(unitWord.slice(0, SHOWN));
  if (unitWord.trim() !== '' && named === null) return fault('weight-unit', 'not-a-unit');
  if (named !== null && columns.weightUnit !== null && named !== columns.weightUnit) {
    return fault('weight-unit', 'units-clash');
  }
  const read = weightCell(cell.slice(0, SHOWN), named ?? columns.weightUnit);
  return read.ok ? read.weight : fault('weight', read.why);
}

function isBeyond(mass: Mass, species: Species, kind: AnimalClass): boolean {
  return doubtOf({ species, class: kind, lastWeight: null }, mass, 0) === 'outside-species';
}
