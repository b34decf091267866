import { z } from 'zod';
import { Species } from './animal.ts';

/** Why a cell of a herd file keeps its row out. */
export const CellFaultView = z.enum([
  'too-long',
  'control-character',
  'looks-like-formula',
  'not-a-date',
  'date-order-not-known',
  'in-future',
  'too-long-ago',
  'not-a-number',
  'no-unit',
  'units-clash',
  'not-above-zero',
  'not-15-digits',
  'number-too-large',
  'test-code',
  'no-country',
  'outside-species',
  'missing',
  'not-a-species',
  'not-a-class',
  'not-a-unit',
  'spoilt-by-spreadsheet',
  'before-birth',
  'weight-without-day',
  'tag-in-file',
  'tag-in-herd',
  'name-in-file',
  'name-in-herd',
]);
/** Why a cell of a herd file keeps its row out. */
export type CellFaultView = z.infer<typeof CellFaultView>;

/** A cell that keeps its row out, by line and column. */
export const RowFaultView = z.strictObject({
  line: z.number().int(),
  /** The heading of its column, or the field's own name where the file has none. */
  column: z.string(),
  why: CellFaultView,
  value: z.string(),
  /** The line or the animal that has the number already. */
  already: z.string().nullable(),
});
/** A cell that keeps its row out. */
export type RowFaultView = z.infer<typeof RowFaultView>;

/** The reading of a herd file: `GET /api/import`; `?from=` pages its faults. */
export const ImportView = z.strictObject({
  files: z.array(z.strictObject({ name: z.string(), bytes: z.number() })),
  stage: z.discriminatedUnion('step', [
    z.strictObject({ step: z.literal('idle') }),
    z.strictObject({ step: z.literal('reading'), file: z.string() }),
    z.strictObject({
      step: z.literal('refused'),
      file: z.string(),
      why: z.enum([
        'not-utf8',
        'broken-quotes',
        'no-table',
        'empty',
        'no-name-column',
        'column-twice',
        'unreadable',
      ]),
      line: z.number().int().nullable(),
      heading: z.string().nullable(),
    }),
    z.strictObject({
      step: z.literal('ready'),
      file: z.string(),
      /** What an acceptance must name. */
      id: z.string(),
      rows: z.number().int(),
      good: z.number().int(),
      unknownColumns: z.array(z.string()),
      unitsMixed: z.boolean(),
      dateOrder: z.enum(['day-first', 'month-first']).nullable(),
      species: Species.nullable(),
      /** What the keeper must say first, because the file does not. */
      asks: z.enum(['date-order', 'species']).nullable(),
      faultCount: z.number().int(),
      /** Where `faults` begins among all of them. */
      from: z.number().int(),
      faults: z.array(RowFaultView),
    }),
    z.strictObject({ step: z.literal('written'), file: z.string(), animals: z.number().int() }),
  ]),
});
/** The reading of a herd file. */
export type ImportView = z.infer<typeof ImportView>;
