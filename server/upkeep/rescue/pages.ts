import { pageSizeOf } from './page-size.ts';
import { readRecord, type Stored, varint } from './record.ts';

/** A row as it stands on a page; tables without row numbers keep theirs in the order of their keys. */
export interface FoundRow {
  readonly rowid: number | null;
  readonly values: readonly Stored[];
}

/** The rows of a leaf, and how many of its cells could not be read. */
export interface Leaf {
  readonly rows: readonly FoundRow[];
  readonly unread: number;
}

/** A branch of a tree: each child holds the rows up to its key, which in a tree of keys is a row itself. */
export interface Branch {
  readonly children: readonly { readonly page: number; readonly upTo: number | null }[];
  readonly rows: readonly FoundRow[];
  readonly last: number;
}

/** What a page is by its first byte. `rows` are numbered, `keys` are those of an index or of a table without numbers. */
export type PageKind = { readonly of: 'rows' | 'keys'; readonly is: 'leaf' | 'branch' };

const KINDS: Readonly<Record<number, PageKind>> = {
  13: { of: 'rows', is: 'leaf' },
  5: { of: 'rows', is: 'branch' },
  10: { of: 'keys', is: 'leaf' },
  2: { of: 'keys', is: 'branch' },
};

/** The pages of a database, those in its log before those in the file. Pages count from 1. */
export class Pages {
  readonly #file: Buffer;
  readonly #log: ReadonlyMap<number, Buffer>;
  readonly size: number;
  readonly count: number;

  constructor(file: Buffer, log: ReadonlyMap<number, Buffer>) {
    this.#file = file;
    this.#log = log;
    this.size = pageSizeOf(file, log.values().next().value?.length);
    this.count = Math.max(Math.ceil(file.length / this.size), ...log.keys());
  }

  /** A page, or `undefined` where the file does not reach that far. */
  at(number: number): Buffer | undefined {
    const logged = this.#log.get(number);
    if (logged !== undefined) return logged;
    const from = (number - 1) * this.size;
    return number >= 1 && from + this.size <= this.#file.length
      ? this.#file.subarray(from, from + this.size)
      : undefined;
  }

  /** What kind of page it is where it belongs to a tree; `null` for all others. */
  kind(number: number): PageKind | null {
    return KINDS[this.at(number)?.[number === 1 ? 100 : 0] ?? 0] ?? null;
  }

  /** Reads the rows of a leaf. Throws a RangeError where it is none. */
  leaf(number: number): Leaf {
    const page = this.at(number);
    const kind = this.kind(number);
    if (page === undefined || kind?.is !== 'leaf') throw new RangeError('no leaf of a tree');
    const head = number === 1 ? 100 : 0;
    const cells = page.readUInt16BE(head + 3);
    if (head + 8 + 2 * cells > page.length) throw new RangeError('more cells than fit');
    const rows: FoundRow[] = [];
    let unread = 0;
    for (let i = 0; i < cells; i += 1) {
      try {
        rows.push(this.#cell(page, page.readUInt16BE(head + 8 + 2 * i), kind.of));
      } catch {
        unread += 1;
      }
    }
    // Rows stand in the order of their numbers: a page where they do not is two pages in one.
    for (let i = 1; kind.of === 'rows' && i < rows.length; i += 1)
      if ((rows[i]?.rowid ?? 0) <= (rows[i - 1]?.rowid ?? 0)) throw new RangeError('rows out of order');
    return { rows, unread };
  }

  /** Reads a branch. Throws a RangeError where it is none. */
  branch(number: number): Branch {
    const page = this.at(number);
    const kind = this.kind(number);
    if (page === undefined || kind?.is !== 'branch') throw new RangeError('no branch of a tree');
    const head = number === 1 ? 100 : 0;
    const cells = page.readUInt16BE(head + 3);
    if (head + 12 + 2 * cells > page.length) throw new RangeError('more cells than fit');
    const rows: FoundRow[] = [];
    const children = Array.from({ length: cells }, (_, i) => {
      const at = page.readUInt16BE(head + 12 + 2 * i);
      if (kind.of === 'rows') return { page: page.readUInt32BE(at), upTo: varint(page, at + 4).value };
      rows.push(this.#cell(page, at + 4, 'keys'));
      return { page: page.readUInt32BE(at), upTo: null };
    });
    return { children, rows, last: page.readUInt32BE(head + 8) };
  }

  #cell(page: Buffer, at: number, of: PageKind['of']): FoundRow {
    const length = varint(page, at);
    const { value: rowid, next: from } =
      of === 'rows' ? varint(page, length.next) : { value: null, next: length.next };
    const here = localBytes(length.value, page.length, of);
    const local = page.subarray(from, from + here);
    if (local.length < here) throw new RangeError('a cell is cut off');
    if (here === length.value) return { rowid, values: readRecord(local) };
    const parts = [local];
    let missing = length.value - here;
    let next = page.readUInt32BE(from + here);
    while (missing > 0) {
      const more = this.at(next);
      if (more === undefined) throw new RangeError('the rest of a row is missing');
      const part = more.subarray(4, 4 + Math.min(missing, more.length - 4));
      parts.push(part);
      missing -= part.length;
      next = more.readUInt32BE(0);
    }
    return { rowid, values: readRecord(Buffer.concat(parts)) };
  }
}

/** How many bytes of a row stand on its page itself: https://www.sqlite.org/fileformat2.html, section 1.6. */
function localBytes(length: number, usable: number, of: PageKind['of']): number {
  const most = of === 'rows' ? usable - 35 : Math.floor(((usable - 12) * 64) / 255) - 23;
  if (length < 0 || length > 1e9) throw new RangeError('a row of no possible length');
  if (length <= most) return length;
  const least = Math.floor(((usable - 12) * 32) / 255) - 23;
  const fits = least + ((length - least) % (usable - 4));
  return fits <= most ? fits : least;
}
