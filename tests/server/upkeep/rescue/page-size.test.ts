import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { PAGE_BYTES } from '../../../../server/store/open-store.ts';
import { Database } from '../../../../server/store/sqlite.ts';
import { pageSizeOf } from '../../../../server/upkeep/rescue/page-size.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'page-size-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** A file with pages of a size, with rows short and long in it. */
function fileOf(size: number): Buffer {
  const path = join(folder, `${size}.sqlite`);
  const db = new Database(path);
  db.pragma(`page_size = ${size}`);
  db.exec('CREATE TABLE dose (id TEXT PRIMARY KEY, what TEXT) STRICT');
  const add = db.prepare('INSERT INTO dose VALUES (?, ?)');
  db.transaction(() => {
    for (let n = 0; n < 3000; n += 1) add.run(`dose ${n}`, 'x'.repeat(n % 17 === 0 ? 5000 : 80));
  })();
  db.close();
  return readFileSync(path);
}

test.each([512, 1024, 2048, 4096, 8192, 65_536])(
  'of %i bytes is found with the header and without',
  (size) => {
    const file = fileOf(size);
    if (size < 65_536) expect(pageSizeOf(file, undefined)).toBe(size);
    file.fill(0x5a, 0, 100);
    expect(pageSizeOf(file, undefined)).toBe(size);
  },
);

test('is what the log says where the header is gone', () => {
  expect(pageSizeOf(Buffer.alloc(8192, 0x5a), 2048)).toBe(2048);
});

test('is that of this program where nothing tells', () => {
  expect(pageSizeOf(Buffer.alloc(8192, 0x5a), undefined)).toBe(PAGE_BYTES);
  expect(pageSizeOf(Buffer.alloc(0), undefined)).toBe(PAGE_BYTES);
});
