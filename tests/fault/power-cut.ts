import type { Random } from '../../hardware/simulator/random.ts';
import type { DiskWrite } from './shim.ts';

/** What a disk keeps of a write it was not made to finish: sectors of this many bytes, each whole or not at all. */
const SECTOR = 512;

/** How a disk behaves when the power goes. */
export interface DiskModel {
  /** Whether waiting on it is worth anything; a disk that lies about it may lose whatever it was told. */
  readonly honest: boolean;
  readonly random: Random;
}

interface KeptFile {
  /** As it stands on the platter. */
  bytes: Buffer;
  there: boolean;
  /** What was done since it was last waited for, oldest first. */
  pending: DiskWrite[];
}

/**
 * The files as they may stand when the power goes after so many of the writes, by their paths. `begun` are the files as they
 * stood, on the disk, before the first.
 *
 * What was waited for is there. Of what came after, each write is there whole, in part by sectors, or not at all, each by
 * itself: the order in which a disk writes is its own. Names are kept in order, as a file system with a journal keeps them.
 */
export function afterPowerCut(
  begun: ReadonlyMap<string, Buffer>,
  writes: readonly DiskWrite[],
  { honest, random }: DiskModel,
): Map<string, Buffer> {
  const files = new Map<string, KeptFile>();
  const file = (path: string): KeptFile => {
    const known = files.get(path);
    if (known !== undefined) return known;
    const bytes = begun.get(path);
    const fresh = {
      bytes: bytes === undefined ? Buffer.alloc(0) : Buffer.from(bytes),
      there: bytes !== undefined,
      pending: [],
    };
    files.set(path, fresh);
    return fresh;
  };
  for (const path of begun.keys()) file(path);
  for (const write of writes) {
    const target = file(write.path);
    if (write.kind === 'sync') {
      if (honest) finish(target);
    } else if (write.kind === 'rename') {
      const to = file(write.data.toString('utf8'));
      [to.bytes, to.there, to.pending] = [target.bytes, target.there, target.pending];
      [target.bytes, target.there, target.pending] = [Buffer.alloc(0), false, []];
    } else if (write.kind === 'unlink') {
      [target.bytes, target.there, target.pending] = [Buffer.alloc(0), false, []];
    } else {
      target.there = true;
      target.pending.push(write);
    }
  }
  const left = new Map<string, Buffer>();
  for (const [path, kept] of files) {
    for (const write of kept.pending) perhaps(kept, write, random);
    if (kept.there) left.set(path, kept.bytes);
  }
  return left;
}

function finish(file: KeptFile): void {
  for (const write of file.pending) apply(file, write);
  file.pending = [];
}

function perhaps(file: KeptFile, write: DiskWrite, random: Random): void {
  const chance = random();
  if (chance < 1 / 3) return;
  if (chance < 2 / 3 || write.kind === 'truncate') {
    apply(file, write);
    return;
  }
  for (let at = 0; at < write.data.length; at += SECTOR) {
    if (random() < 0.5) continue;
    apply(file, { ...write, offset: write.offset + at, data: write.data.subarray(at, at + SECTOR) });
  }
}

function apply(file: KeptFile, { kind, offset, data }: DiskWrite): void {
  const before = file.bytes.length;
  const end = kind === 'truncate' ? offset : Math.max(before, offset + data.length);
  if (end > before) file.bytes = grown(file.bytes, end);
  else if (end < before) file.bytes = file.bytes.subarray(0, end);
  if (kind === 'write') data.copy(file.bytes, offset);
}

/** Memory with room behind a file that grows, by this module. */
const ROOMY = new WeakSet<object>();

/** A file made longer by zeros. A log grows by thousands of writes: room for as many again is kept behind it. */
function grown(bytes: Buffer, length: number): Buffer {
  if (ROOMY.has(bytes.buffer) && length <= bytes.buffer.byteLength) {
    const longer = Buffer.from(bytes.buffer, 0, length);
    longer.fill(0, bytes.length);
    return longer;
  }
  const room = new ArrayBuffer(2 * length);
  ROOMY.add(room);
  const longer = Buffer.from(room, 0, length);
  bytes.copy(longer);
  return longer;
}
