import { CsvError, parse } from 'csv-parse/sync';
import type { FileRow } from '../../core/herd-file/preview.ts';

/** The rows of a herd file, or why it cannot be read at all. */
export type FileResult =
  | { readonly ok: true; readonly rows: readonly FileRow[] }
  | {
      readonly ok: false;
      readonly why: 'not-utf8' | 'broken-quotes' | 'no-table';
      readonly line: number | null;
    };

/** What cells may be parted by; the one most often in the heading counts. */
const DELIMITERS = [',', ';', '\t'] as const;

/**
 * Takes a CSV file apart, each row with the line it begins on. What the cells say is for `previewHerd` to judge.
 *
 * Text must be UTF-8: in any other encoding names would be kept wrong without a sign. A byte order mark is let pass, rows
 * may be shorter or longer than the heading.
 */
export function readHerdFile(bytes: Uint8Array): FileResult {
  const text = decoded(bytes);
  if (text === null) return { ok: false, why: 'not-utf8', line: null };
  try {
    return { ok: true, rows: withLines(records(text)) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error['lines'] === 'number' ? error['lines'] : null;
    return { ok: false, why: error.code.includes('QUOTE') ? 'broken-quotes' : 'no-table', line };
  }
}

function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

interface ParsedRecord {
  readonly record: string[];
  readonly info: { readonly lines: number };
}

function records(text: string): ParsedRecord[] {
  return parse(text, {
    bom: true,
    delimiter: delimiterOf(text),
    info: true,
    relax_column_count: true,
  }) as unknown as ParsedRecord[];
}

function delimiterOf(text: string): string {
  const heading = /^[^\r\n]{0,4000}/.exec(text)?.[0] ?? '';
  const count = (delimiter: string): number => heading.split(delimiter).length;
  return DELIMITERS.reduce((best, next) => (count(next) > count(best) ? next : best));
}

/** The parser tells the line a record ends on; the next begins on the one after it. */
function withLines(parsed: readonly ParsedRecord[]): FileRow[] {
  return parsed.map(({ record }, at) => ({ line: (parsed[at - 1]?.info.lines ?? 0) + 1, cells: record }));
}
