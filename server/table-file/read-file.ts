import { finished } from 'node:stream/promises';
import { setImmediate as turn } from 'node:timers/promises';
import { parse as parseInParts } from 'csv-parse';
import { parse } from 'csv-parse/sync';
import type { FileRow } from '../../core/herd-file/preview.ts';
import { errorCode } from '../error-code.ts';

/** The rows of a table, or why it cannot be read at all. */
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
 * Takes a CSV file apart, each row with the line it begins on. What the cells say is for others to judge.
 *
 * Text must be UTF-8: in any other encoding names would be kept wrong without a sign. A byte order mark is let pass, rows
 * may be shorter or longer than the heading.
 */
export function readTable(bytes: Uint8Array): FileResult {
  const text = decoded(bytes);
  if (text === null) return { ok: false, why: 'not-utf8', line: null };
  try {
    return { ok: true, rows: withLines(records(text)) };
  } catch (error) {
    return brokenBy(error);
  }
}

/** Bytes taken apart between two turns of the event loop. */
const BYTES_A_TURN = 32 * 1024;

/** The same in parts, so that scales and screens are heard between them. */
export async function readTableInParts(bytes: Uint8Array): Promise<FileResult> {
  const text = decoded(bytes);
  if (text === null) return { ok: false, why: 'not-utf8', line: null };
  const parser = parseInParts(optionsFor(text));
  const rows: FileRow[] = [];
  // What the parser tells of each record is let go at once: kept to the end, it is most of what must be swept.
  let line = 1;
  parser.on('data', ({ record, info }: ParsedRecord) => {
    rows.push({ line, cells: record });
    line = info.lines + 1;
  });
  const ended = finished(parser).then(
    () => null,
    (error: unknown) => error,
  );
  for (let at = 0; at < bytes.length && !parser.destroyed; at += BYTES_A_TURN) {
    parser.write(bytes.subarray(at, at + BYTES_A_TURN));
    await turn();
  }
  if (!parser.destroyed) parser.end();
  const error = await ended;
  return error === null ? { ok: true, rows } : brokenBy(error);
}

function brokenBy(error: unknown): FileResult {
  const known = errorCode(error);
  if (!known.startsWith('CSV_')) throw error;
  const line =
    error instanceof Error && 'lines' in error && typeof error.lines === 'number' ? error.lines : null;
  return { ok: false, why: known.includes('QUOTE') ? 'broken-quotes' : 'no-table', line };
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
  return parse(text, optionsFor(text)) as unknown as ParsedRecord[];
}

function optionsFor(text: string) {
  return { bom: true, delimiter: delimiterOf(text), info: true, relax_column_count: true } as const;
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
