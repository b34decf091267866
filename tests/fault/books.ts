import { verifyChain } from '../../server/store/chain.ts';
import { Database } from '../../server/store/sqlite.ts';
import { acknowledged, type Ledger } from './ledger.ts';

/** What the disk holds, held against what was acknowledged. */
export interface Reckoning {
  /** Ids that were acknowledged and that the disk does not know. */
  readonly lost: readonly string[];
  /** Kinds of record of which the disk holds another number than was acknowledged. */
  readonly miscounted: readonly string[];
  /** Records that stand without what belongs to them, and what SQLite and the chain have to say. */
  readonly halves: readonly string[];
}

/** Intents that are written down under their id, and the table each writes one row to. */
const WRITES = { 'give-group': 'treatments', correct: 'corrections', 'note-animal': 'notes' } as const;

/** What of a treatment must stand with it: its line and its link; and with a correction its treatment. */
const HALVES: Readonly<Record<string, string>> = {
  'treatments without a line': `SELECT count(*) FROM treatments WHERE NOT EXISTS
    (SELECT 1 FROM book_lines WHERE kind = 'treatment' AND book_lines.sequence = treatments.sequence)`,
  'lines without a treatment': `SELECT count(*) FROM book_lines WHERE kind = 'treatment' AND NOT EXISTS
    (SELECT 1 FROM treatments WHERE treatments.sequence = book_lines.sequence)`,
  'records that are no JSON': 'SELECT count(*) FROM treatments WHERE NOT json_valid(record)',
  'corrections of nothing': `SELECT count(*) FROM corrections WHERE treatment_id NOT IN (SELECT id FROM treatments)`,
  'corrections a line does not know': `SELECT count(*) FROM book_lines JOIN treatments USING (sequence)
    WHERE book_lines.kind = 'treatment' AND corrected <> EXISTS
      (SELECT 1 FROM corrections WHERE treatment_id = treatments.id)`,
};

/**
 * Reads a database against the ledger. `exact` where everything sent was answered in the end, so that the disk must hold as
 * many records as were acknowledged and no more. Opens it as the kiosk would after a crash.
 */
export function reckon(file: string, ledger: Ledger, exact: boolean): Reckoning {
  const db = new Database(file);
  try {
    const handled = new Set(db.prepare('SELECT id FROM handled_intents').pluck().all() as string[]);
    const count = (sql: string) => db.prepare(sql).pluck().get() as number;
    const lost: string[] = [];
    const miscounted: string[] = [];
    for (const [type, table] of Object.entries(WRITES)) {
      const due = acknowledged(ledger, type);
      for (const { intent } of due) if (!handled.has(intent.id)) lost.push(`${type} ${intent.id}`);
      const held = count(`SELECT count(*) FROM ${table}`);
      if (exact ? held !== due.length : held < due.length)
        miscounted.push(`${held} ${table} for ${due.length} acknowledged`);
    }
    const halves = Object.entries(HALVES).flatMap(([what, sql]) => (count(sql) === 0 ? [] : [what]));
    for (const { what, kind, sequence } of verifyChain(db).troubles)
      halves.push(`${kind} ${sequence} ${what}`);
    if ((db.pragma('quick_check', { simple: true }) as string) !== 'ok') halves.push('the file is damaged');
    if ((db.pragma('foreign_key_check') as unknown[]).length > 0) halves.push('rows that point to nothing');
    return { lost, miscounted, halves };
  } finally {
    db.close();
  }
}
