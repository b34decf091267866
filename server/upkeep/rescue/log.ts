/** What the log beside a database holds. */
export interface LogRead {
  /** The newest page of each number that was committed, as SQLite itself would read it. */
  readonly pages: ReadonlyMap<number, Buffer>;
  readonly commits: number;
  /** Frames behind the last commit that could be believed, of the same run of the log: not to be believed. */
  readonly left: number;
}

const FRAME_HEADER = 24;
const LOG_HEADER = 32;

/**
 * Reads a write-ahead log as far as its checksums hold: https://www.sqlite.org/fileformat2.html, section 4. A log whose
 * header cannot be read holds nothing.
 */
export function readLog(log: Buffer): LogRead {
  const nothing = { pages: new Map<number, Buffer>(), commits: 0, left: 0 };
  if (log.length < LOG_HEADER) return nothing;
  const magic = log.readUInt32BE(0);
  if (magic !== 0x377f0682 && magic !== 0x377f0683) return nothing;
  const sums = sumsIn(magic === 0x377f0683);
  let sum = sums([0, 0], log.subarray(0, 24));
  if (sum[0] !== log.readUInt32BE(24) || sum[1] !== log.readUInt32BE(28)) return nothing;
  const size = log.readUInt32BE(8);
  const salts = log.subarray(16, 24);
  const pages = new Map<number, Buffer>();
  let pending = new Map<number, Buffer>();
  let commits = 0;
  let at = LOG_HEADER;
  for (; at + FRAME_HEADER + size <= log.length; at += FRAME_HEADER + size) {
    const header = log.subarray(at, at + FRAME_HEADER);
    const page = log.subarray(at + FRAME_HEADER, at + FRAME_HEADER + size);
    if (!header.subarray(8, 16).equals(salts)) break;
    sum = sums(sums(sum, header.subarray(0, 8)), page);
    if (sum[0] !== header.readUInt32BE(16) || sum[1] !== header.readUInt32BE(20)) break;
    pending.set(header.readUInt32BE(0), page);
    if (header.readUInt32BE(4) === 0) continue;
    commits += 1;
    for (const [number, committed] of pending) pages.set(number, committed);
    pending = new Map();
  }
  return { pages, commits, left: pending.size + framesOf(log, at, size, salts) };
}

/** Frames from a place on that belong to the same run of the log: those of an earlier run are old news. */
function framesOf(log: Buffer, from: number, size: number, salts: Buffer): number {
  let count = 0;
  for (let at = from; at + FRAME_HEADER + size <= log.length; at += FRAME_HEADER + size)
    if (log.subarray(at + 8, at + 16).equals(salts)) count += 1;
  return count;
}

type Sum = readonly [number, number];

function sumsIn(bigEndian: boolean): (before: Sum, bytes: Buffer) => Sum {
  return (before, bytes) => {
    let [a, b] = before;
    for (let at = 0; at < bytes.length; at += 8) {
      const [x, y] = bigEndian
        ? [bytes.readUInt32BE(at), bytes.readUInt32BE(at + 4)]
        : [bytes.readUInt32LE(at), bytes.readUInt32LE(at + 4)];
      a = (a + x + b) >>> 0;
      b = (b + y + a) >>> 0;
    }
    return [a, b];
  };
}
