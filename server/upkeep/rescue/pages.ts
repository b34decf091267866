import { readRecord, type Stored, varint } from './record.ts';

/** A row as it stands on a page. */
export interface FoundRow {
  readonly rowid: number;
  readonly values: readonly Stored[];
}

/** The rows of a leaf, and how many of its cells could not be read. */
export interface Leaf {
  readonly rows: readonly FoundRow[];
  readonly unread: number;
}

/** A branch of a table's tree: each child holds the rows up to its key. */
export interface Branch {
  readonly children: readonly { readonly page: number; readonly upTo: number }[];
  readonly last: number;
}

/** The pages of a database, those in its log before those in the file. Pages count from 1. */
export class Pages {
  readonly #file: Buffer;
  readonly #log: ReadonlyMap<number, Buffer>;
  readonly size: number;
  readonly count: number;

  constructor(file: Buffer, log: ReadonlyMap<number, Buffer>) {
    this.#file = file;
    this.#log = log;
    const said = file.length >= 18 ? file.readUInt16BE(16) : 0;
    const logged = log.values().next().value?.length;
    // Where the header is gone, pages are what the log says, or of the size this program makes them.
    this.size = said >= 512 && (said & (said - 1)) === 0 ? said : (logged ?? 4096);
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

  /** What kind of page it is where it belongs to a table; `null` for all others. */
  kind(number: number): 'leaf' | 'branch' | null {
    const page = this.at(number);
    const byte = page?.[number === 1 ? 100 : 0];
    return byte === 0x0d ? 'leaf' : byte === 0x05 ? 'branch' : null;
  }

  /** Reads the rows of a leaf. Throws a RangeError where it is none. */
  leaf(number: number): Leaf {
    const page = this.at(number);
    if (page === undefined || this.kind(number) !== 'leaf') throw new RangeError('no leaf of a table');
    const head = number === 1 ? 100 : 0;
    const cells = page.readUInt16BE(head + 3);
    if (head + 8 + 2 * cells > page.length) throw new RangeError('more cells than fit');
    const rows: FoundRow[] = [];
    let unread = 0;
    for (let i = 0; i < cells; i += 1) {
      try {
        rows.push(this.#cell(page, page.readUInt16BE(head + 8 + 2 * i)));
      } catch {
        unread += 1;
      }
    }
    // Rows stand in the order of their numbers: a page where they do not is two pages in one.
    for (let i = 1; i < rows.length; i += 1)
      if ((rows[i]?.rowid ?? 0) <= (rows[i - 1]?.rowid ?? 0)) throw new RangeError('rows out of order');
    return { rows, unread };
  }

  /** Reads a branch. Throws a RangeError where it is none. */
  branch(number: number): Branch {
    const page = this.at(number);
    if (page === undefined || this.kind(number) !== 'branch') throw new RangeError('no branch of a table');
    const head = number === 1 ? 100 : 0;
    const cells = page.readUInt16BE(head + 3);
    if (head + 12 + 2 * cells > page.length) throw new RangeError('more cells than fit');
    const children = Array.from({ length: cells }, (_, i) => {
      const at = page.readUInt16BE(head + 12 + 2 * i);
      return { page: page.readUInt32BE(at), upTo: varint(page, at + 4).value };
    });
    return { children, last: page.readUInt32BE(head + 8) };
  }

  #cell(page: Buffer, at: number): FoundRow {
    const length = varint(page, at);
    const rowid = varint(page, length.next);
    const here = localBytes(length.value, page.length);
    const local = page.subarray(rowid.next, rowid.next + here);
    if (local.length < here) throw new RangeError('a cell is cut off');
    if (here === length.value) return { rowid: rowid.value, values: readRecord(local) };
    const parts = [local];
    let missing = length.value - here;
    let next = page.readUInt32BE(rowid.next + here);
    while (missing > 0) {
      const more = this.at(next);
      if (more === undefined) throw new RangeError('the rest of a row is missing');
      const part = more.subarray(4, 4 + Math.min(missing, more.length - 4));
      parts.push(part);
      missing -= part.length;
      next = more.readUInt32BE(0);
    }
    return { rowid: rowid.value, values: readRecord(Buffer.concat(parts)) };
  }
}

/** How many bytes of a row stand on its leaf itself: https://www.sqlite.org/fileformat2.html, section 1.6. */
function localBytes(length: number, usable: number): number {
  const most = usable - 35;
  if (length < 0 || length > 1e9) throw new RangeError('a row of no possible length');
  if (length <= most) return length;
  const least = Math.floor(((usable - 12) * 32) / 255) - 23;
  const fits = least + ((length - least) % (usable - 4));
  return fits <= most ? fits : least;
}
