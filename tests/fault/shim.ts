import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const SOURCE = fileURLToPath(new URL('./shim.c', import.meta.url));

/** Errors of a disk by their number in Linux. */
export const ERRNO = { none: 0, EIO: 5, ENOSPC: 28, EROFS: 30 } as const;

/** Compiles what stands between a process and its disk; `null` where there is no compiler. */
export function buildShim(): string | null {
  const out = join(mkdtempSync(join(tmpdir(), 'shim-')), 'shim.so');
  const { status } = spawnSync('cc', ['-shared', '-fPIC', '-O2', '-o', out, SOURCE, '-ldl']);
  return status === 0 ? out : null;
}

/** A process behind the shim: what to start it with, what it wrote, and what to make fail. */
export interface Shimmed {
  readonly env: Record<string, string>;
  /** Makes writes, or waiting on the disk, fail from now on. */
  fail(what: { readonly write?: number; readonly sync?: number }): void;
  /** Moves the time of day of the process, in milliseconds from the true one. */
  moveClock(byMs: number): void;
  /** What reached the files so far. */
  writes(): DiskWrite[];
}

/** One thing a process did to a file. */
export interface DiskWrite {
  readonly kind: 'write' | 'truncate' | 'sync' | 'unlink' | 'rename';
  /** Monotonic nanoseconds. */
  readonly at: bigint;
  readonly path: string;
  /** Where a write begins, or the length a file is cut to. */
  readonly offset: number;
  /** What was written, or the new name. */
  readonly data: Buffer;
}

const KINDS: Readonly<Record<string, DiskWrite['kind']>> = {
  w: 'write',
  t: 'truncate',
  s: 'sync',
  u: 'unlink',
  r: 'rename',
};

/** Puts the shim before the files below a folder. */
export function shimOver(library: string, root: string): Shimmed {
  const beside = mkdtempSync(join(tmpdir(), 'shim-log-'));
  const [log, control] = [join(beside, 'log'), join(beside, 'control')];
  const said = Buffer.alloc(16);
  const tell = () => writeFileSync(control, said, { flag: 'r+' });
  writeFileSync(control, said);
  writeFileSync(log, '');
  return {
    env: { LD_PRELOAD: library, FAULT_ROOT: root, FAULT_LOG: log, FAULT_CONTROL: control },
    fail({ write = 0, sync = 0 }) {
      said.writeInt32LE(write, 0);
      said.writeInt32LE(sync, 4);
      tell();
    },
    moveClock(byMs) {
      said.writeBigInt64LE(BigInt(byMs), 8);
      tell();
    },
    writes: () => readWrites(readFileSync(log)),
  };
}

function readWrites(log: Buffer): DiskWrite[] {
  const writes: DiskWrite[] = [];
  let at = 0;
  // A process that was killed may leave half an entry.
  while (at + 32 <= log.length) {
    const [pathLength, dataLength] = [log.readUInt32LE(at + 24), log.readUInt32LE(at + 28)];
    const end = at + 32 + pathLength + dataLength;
    if (end > log.length) break;
    writes.push({
      kind: KINDS[String.fromCharCode(log.readUInt8(at))] ?? 'write',
      at: log.readBigUInt64LE(at + 8),
      offset: Number(log.readBigInt64LE(at + 16)),
      path: log.toString('utf8', at + 32, at + 32 + pathLength),
      data: log.subarray(at + 32 + pathLength, end),
    });
    at = end;
  }
  return writes;
}
