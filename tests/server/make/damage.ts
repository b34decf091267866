import { closeSync, openSync, readSync, writeSync } from 'node:fs';

/** Overwrites bytes of a file in place, as a failing card would. */
export function overwrite(file: string, at: number, bytes: Uint8Array): void {
  const handle = openSync(file, 'r+');
  writeSync(handle, bytes, 0, bytes.length, at);
  closeSync(handle);
}

/** Pages of a database are this large here. */
export const PAGE = 4096;

/** The kind of a page by its first byte: `table-leaf` pages hold the rows. Pages count from 1. */
export function isTableLeaf(file: string, page: number): boolean {
  const handle = openSync(file, 'r');
  const [kind] = [Buffer.alloc(1)];
  readSync(handle, kind, 0, 1, (page - 1) * PAGE + (page === 1 ? 100 : 0));
  closeSync(handle);
  return kind[0] === 0x0d;
}
