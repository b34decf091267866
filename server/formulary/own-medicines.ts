import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { SHIPPED } from '../../core/formulary/shipped.ts';
import { type Addition, type Retirement, withAdditions } from '../../core/medicine/additions.ts';
import type { Formulary } from '../../core/medicine/formulary.ts';
import { writeWhole } from '../config/write-whole.ts';

/** The name of the farm's own additions in the data folder. */
export const MEDICINES_FILE = 'medicines.json';
/** The same for the demo: what is tried there reaches no real work. */
export const DEMO_MEDICINES_FILE = 'demo-medicines.json';

/** The formulary of a farm, what of it is its own, and what of its own file was left out, a sentence each. */
export interface OwnMedicines {
  readonly formulary: Formulary;
  /** Ids of the presentations and rules the farm added. */
  readonly own: ReadonlySet<string>;
  /** Ids of those that are used no more. */
  readonly retired: ReadonlySet<string>;
  readonly trouble: readonly string[];
}

/** The file of a farm's own medicines. */
export interface MedicinesFile {
  /**
   * Reads it beside what ships. A file that cannot be read, or an entry that makes no sense, leaves the kiosk running
   * without it and says so.
   */
  read(): OwnMedicines;
  /**
   * Adds entries at its end and reads it anew; what a person wrote there stays as it is. `null` where the file cannot
   * be read and so is not touched. Throws, with the file as it was, when an entry makes no sense beside what is there or
   * the disk refuses.
   */
  append(entries: readonly (Addition | Retirement)[]): OwnMedicines | null;
}

/** What ships, where a farm has added nothing. */
export const NOTHING_OWN: OwnMedicines = {
  formulary: SHIPPED,
  own: new Set(),
  retired: new Set(),
  trouble: [],
};

/** The file of a farm's own medicines in a data folder; it need not exist. */
export function medicinesFile(dataFolder: string, name = MEDICINES_FILE): MedicinesFile {
  const file = join(dataFolder, name);
  const entries = (): unknown[] | string => (existsSync(file) ? readEntries(file, name) : []);
  return {
    read() {
      const read = entries();
      return typeof read === 'string' ? { ...NOTHING_OWN, trouble: [read] } : taken(read, name);
    },
    append(more) {
      const before = entries();
      if (typeof before === 'string') return null;
      const after = [...before, ...more];
      const bad = withAdditions(SHIPPED, after).leftOut.find(({ entry }) => entry > before.length);
      if (bad !== undefined) throw new Error(`${bad.field}: ${bad.detail}`);
      mkdirSync(dirname(file), { recursive: true });
      writeWhole(file, `${JSON.stringify(after, null, 2)}\n`);
      return taken(after, name);
    },
  };
}

function taken(entries: readonly unknown[], name: string): OwnMedicines {
  const { leftOut, ...rest } = withAdditions(SHIPPED, entries);
  const trouble = leftOut.map(
    ({ entry, field, detail }) =>
      `Entry ${entry} of ${name} is left out: ${field === '' ? '' : `${field}: `}${detail}. Correct it in the file, then start the kiosk again.`,
  );
  return { ...rest, trouble };
}

function readEntries(file: string, name: string): unknown[] | string {
  try {
    const entries: unknown = JSON.parse(readFileSync(file, 'utf8'));
    if (Array.isArray(entries)) return entries;
    return `${name} is no list: put its entries between [ and ], then start the kiosk again.`;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return `${name} cannot be read (${why}). Mend it so that it is valid JSON, then start the kiosk again.`;
  }
}
