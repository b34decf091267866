import { PAGE_BYTES } from '../../store/open-store.ts';

/** Sizes that pages may have (sqlite.org, *Database File Format*, 1.3.2). */
const SIZES = [512, 1024, 2048, 4096, 8192, 16_384, 32_768, 65_536];
/** First bytes of pages that belong to a tree, and how long the rest of their heads is. */
const HEADS: Readonly<Record<number, number>> = { 2: 12, 5: 12, 10: 8, 13: 8 };
/** Where so many of the places hold the head of a page, pages begin there. */
const ENOUGH = 0.05;

/** The size of the pages of a file whose header may be gone: as its header says, as its log does, or by where pages begin. */
export function pageSizeOf(file: Buffer, logged: number | undefined): number {
  const said = file.length >= 18 ? file.readUInt16BE(16) : 0;
  if (said >= 512 && (said & (said - 1)) === 0) return said;
  return logged ?? SIZES.find((size) => beginsThere(file, size)) ?? PAGE_BYTES;
}

/** Whether pages begin at the odd multiples of a size: those of larger pages never do. */
function beginsThere(file: Buffer, size: number): boolean {
  let looked = 0;
  let found = 0;
  for (let at = size; at + size <= file.length; at += 2 * size) {
    looked += 1;
    if (isHead(file, at, size)) found += 1;
  }
  return looked > 0 && found / looked >= ENOUGH;
}

/** Whether the bytes from here on are the head of a page: its cells fit between its head and its end. */
function isHead(file: Buffer, at: number, size: number): boolean {
  const head = HEADS[file[at] ?? 0];
  if (head === undefined) return false;
  const cells = file.readUInt16BE(at + 3);
  const from = file.readUInt16BE(at + 5);
  return cells > 0 && from >= head + 2 * cells && from < size;
}
