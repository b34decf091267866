import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { SHIPPED } from '../../core/formulary/shipped.ts';
import { withAdditions } from '../../core/medicine/additions.ts';
import type { Formulary } from '../../core/medicine/formulary.ts';

/** The name of the farm's own additions in the data folder. */
export const MEDICINES_FILE = 'medicines.json';

/** The formulary of a farm, and what of its own file was left out, a sentence each. */
export interface OwnMedicines {
  readonly formulary: Formulary;
  readonly trouble: readonly string[];
}

/**
 * Reads the farm's own medicines beside what ships. A file that cannot be read, or an entry that makes no sense, leaves
 * the kiosk running without it and says so.
 */
export function readOwnMedicines(dataFolder: string): OwnMedicines {
  const file = join(dataFolder, MEDICINES_FILE);
  if (!existsSync(file)) return { formulary: SHIPPED, trouble: [] };
  const entries = readEntries(file);
  if (typeof entries === 'string') return { formulary: SHIPPED, trouble: [entries] };
  const { formulary, leftOut } = withAdditions(SHIPPED, entries);
  const trouble = leftOut.map(
    ({ entry, field, detail }) =>
      `Entry ${entry} of ${MEDICINES_FILE} is left out: ${field === '' ? '' : `${field}: `}${detail}. Correct it in the file, then start the kiosk again.`,
  );
  return { formulary, trouble };
}

function readEntries(file: string): unknown[] | string {
  try {
    const entries: unknown = JSON.parse(readFileSync(file, 'utf8'));
    if (Array.isArray(entries)) return entries;
    return `${MEDICINES_FILE} is no list: put its entries between [ and ], then start the kiosk again.`;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return `${MEDICINES_FILE} cannot be read (${why}). Mend it so that it is valid JSON, then start the kiosk again.`;
  }
}
