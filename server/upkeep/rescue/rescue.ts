import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { type ChainReport, verifyChain } from '../../store/chain.ts';
import { endLife } from '../../store/events.ts';
import { MIGRATIONS } from '../../store/migrations.ts';
import type { Db } from '../../store/open-store.ts';
import { createStore } from '../../store/store.ts';
import { type FreshTable, freshFile, freshTables } from './fresh.ts';
import { readLog } from './log.ts';
import { makeMissing } from './missing.ts';
import { type FoundRow, Pages } from './pages.ts';
import { walkTable } from './walk.ts';

/** What came out of a damaged file. */
export interface Rescued {
  /** Rows read, by table. */
  readonly rows: Readonly<Record<string, number>>;
  /** What could not be read, or had to be made anew, a sentence each. */
  readonly lost: readonly string[];
  /** What the chain says of what was read; `null` where the file is older than the chain. */
  readonly chain: ChainReport | null;
}

/** Lines are made anew from the records they stand for. */
const MADE_ANEW = ['book_lines'];
/** A row of few columns fits by chance: a page nothing leads to is believed to be keys of a table only from so many on. */
const TELLING = 5;

interface Source {
  readonly pages: Pages;
  readonly seen: Set<number>;
  readonly lost: string[];
}

/**
 * Reads a damaged database page by page, with the log beside it as far as its checksums hold, and writes what was readable
 * into a new file. The damaged one is only read. Throws where the new file is there already or cannot be written.
 */
export function rescue(file: string, out: string): Rescued {
  if (existsSync(out)) throw new Error(`${out} is there already: name a file that is not`);
  const bytes = readFileSync(file);
  const log = readLog(existsSync(`${file}-wal`) ? readFileSync(`${file}-wal`) : Buffer.alloc(0));
  const source: Source = { pages: new Pages(bytes, log.pages), seen: new Set(), lost: [] };
  if (log.left > 0) source.lost.push(`the log: ${log.left} pages behind its last readable commit`);
  if (bytes.length % source.pages.size !== 0) source.lost.push('the file ends in the middle of a page');
  const db = freshFile(out, versionOf(source.pages));
  try {
    const rows = db.transaction(() => fill(db, source))();
    const chained = db.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'chain'").get() !== undefined;
    const chain = chained ? verifyChain(db) : null;
    source.lost.push(...danglingIn(db));
    endLife(db);
    db.close();
    // Brings it up to date, and files the lines of the day book anew.
    createStore(out).close();
    return { rows, lost: source.lost, chain };
  } catch (error) {
    db.close();
    for (const ending of ['', '-wal', '-shm', '-journal']) rmSync(`${out}${ending}`, { force: true });
    throw error;
  }
}

/** The version of the damaged file by its header, or this program's where that is gone. */
function versionOf(pages: Pages): number {
  const said = pages.at(1)?.readUInt32BE(60) ?? 0;
  return said > 0 && said <= MIGRATIONS.length ? said : MIGRATIONS.length;
}

function fill(db: Db, source: Source): Record<string, number> {
  const { pages, seen, lost } = source;
  const schema = readSchema(source);
  const tables = freshTables(db, MADE_ANEW);
  const counts: Record<string, number> = {};
  const gaps: FreshTable[] = [];
  for (const table of tables) {
    const root = schema.roots.get(table.name);
    if (root === undefined) {
      lost.push(`${table.name}: the way to its rows is lost`);
      gaps.push(table);
      continue;
    }
    const walked = walkTable(pages, root, seen);
    counts[table.name] = putAll(table, walked.rows, lost);
    for (const line of walked.lost) lost.push(`${table.name}: ${line}`);
    if (walked.lost.length > 0) gaps.push(table);
  }
  for (const name of MADE_ANEW) walkTable(pages, schema.roots.get(name) ?? 0, seen);
  for (const [table, count] of putLoose(db, source, gaps)) {
    counts[table.name] = (counts[table.name] ?? 0) + count;
    lost.push(`${table.name}: ${count} rows were found on pages that nothing leads to, and taken`);
  }
  keepNumbers(db, source, schema.roots.get('sqlite_sequence'));
  lost.push(...makeMissing(db));
  return counts;
}

/** Roots of the tables by the file's own schema. */
function readSchema({ pages, seen, lost }: Source): { roots: Map<string, number> } {
  const walked = walkTable(pages, 1, seen);
  for (const line of walked.lost) lost.push(`the schema: ${line}`);
  const roots = new Map<string, number>();
  for (const { values } of walked.rows) {
    const [type, name, , root] = values;
    if (type === 'table' && typeof name === 'string' && typeof root === 'number') roots.set(name, root);
    // What indexes hold stands in the tables too: their pages are not looked at for lost rows.
    if (type === 'index' && typeof root === 'number') walkTable(pages, root, seen);
  }
  return { roots };
}

function putAll(table: FreshTable, rows: readonly FoundRow[], lost: string[]): number {
  let put = 0;
  for (const row of rows) {
    const what = table.put(row);
    if (what === 'put') put += 1;
    else if (what === 'does-not-fit') lost.push(`${table.name}: row ${row.rowid ?? ''} makes no sense`);
  }
  return put;
}

/** Takes the rows of leaves that no tree leads to, where all of a leaf fit into one of the tables that miss some. */
function putLoose(db: Db, { pages, seen }: Source, gaps: readonly FreshTable[]): Map<FreshTable, number> {
  const found = new Map<FreshTable, number>();
  for (let page = 2; gaps.length > 0 && page <= pages.count; page += 1) {
    const kind = pages.kind(page);
    if (seen.has(page) || kind?.is !== 'leaf') continue;
    const rows = rowsOf(pages, page);
    if (rows.length === 0) continue;
    const able = gaps.filter(
      (table) => table.numbered === (kind.of === 'rows') && (table.numbered || table.columns >= TELLING),
    );
    const fitting = able.filter((table) => fits(db, table, rows));
    const [table] = fitting;
    // A leaf that fits two tables may be of either.
    if (table === undefined || fitting.length > 1) continue;
    found.set(table, (found.get(table) ?? 0) + rows.filter((row) => table.put(row) === 'put').length);
  }
  for (const [table, count] of found) if (count === 0) found.delete(table);
  return found;
}

function rowsOf(pages: Pages, page: number): readonly FoundRow[] {
  try {
    return pages.leaf(page).rows;
  } catch {
    return [];
  }
}

/** Whether all rows of a leaf fit a table; puts none in. */
function fits(db: Db, table: FreshTable, rows: readonly FoundRow[]): boolean {
  db.exec('SAVEPOINT trying');
  const fit = rows.every((row) => table.put(row) !== 'does-not-fit');
  db.exec('ROLLBACK TO trying; RELEASE trying');
  return fit;
}

/** Carries over the highest number each table ever gave out, so that the chain can tell whether the newest are missing. */
function keepNumbers(db: Db, { pages, seen }: Source, root: number | undefined): void {
  if (root === undefined) return;
  const raise = db.prepare('UPDATE sqlite_sequence SET seq = max(seq, ?) WHERE name = ?');
  const add = db.prepare('INSERT INTO sqlite_sequence (name, seq) VALUES (?, ?)');
  for (const { values } of walkTable(pages, root, seen).rows) {
    const [name, seq] = values;
    if (typeof name !== 'string' || typeof seq !== 'number') continue;
    if (raise.run(seq, name).changes === 0) add.run(name, seq);
  }
}

function danglingIn(db: Db): string[] {
  const rows = db.pragma('foreign_key_check') as { table: string; rowid: number | null; parent: string }[];
  return rows.map(
    ({ table, rowid, parent }) => `${table}: row ${rowid ?? ''} names one of ${parent} that is lost`,
  );
}

/** What was rescued as lines of text. */
export function rescueLines({ rows, lost, chain }: Rescued): string[] {
  const total = Object.values(rows).reduce((sum, count) => sum + count, 0);
  return [
    `${total} rows read:`,
    ...Object.entries(rows).map(([table, count]) => `  ${table} ${count}`),
    lost.length === 0
      ? 'Nothing was lost.'
      : `${lost.length} things could not be read or are to be looked at:`,
    ...lost.map((line) => `  ${line}`),
    ...(chain === null || chain.troubles.length === 0
      ? []
      : [
          'By the chain of the day book:',
          ...chain.troubles.map(({ what, kind, sequence }) => `  ${kind} ${sequence}: ${what}`),
        ]),
  ];
}

/** `npm run rescue -- FILE OUT`: writes OUT, and what was lost into OUT.txt. Answers the exit code. */
export function runRescue(file: string | undefined, out: string | undefined): number {
  if (file === undefined || out === undefined) {
    console.error(
      'Name the damaged file and the new one: npm run rescue -- data/byreside.sqlite rescued.sqlite',
    );
    return 2;
  }
  try {
    const lines = rescueLines(rescue(file, out));
    writeFileSync(`${out}.txt`, `${lines.join('\n')}\n`);
    for (const line of lines) console.log(line);
    console.log(`Written: ${out}, and this list beside it. Put it to use with: npm run restore -- ${out}`);
    return 0;
  } catch (error) {
    console.error(`Nothing was rescued: ${error instanceof Error ? error.message : error}`);
    return 1;
  }
}
