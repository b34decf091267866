import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { AccessBook } from '../../../server/network/access-book.ts';
import { accessFile } from '../../../server/network/access-file.ts';
import { isPin, keptPin } from '../../../server/network/pin.ts';

let root = '';
let folder = '';
let file = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'access-'));
  folder = join(root, 'network');
  file = join(folder, 'access.json');
});
afterEach(() => rmSync(root, { recursive: true }));

const PHONE = { id: 'd1', kind: 'phone', right: 'act', pairedAtMs: 5 } as const;

test('a token is kept as a hash only, in a file of the kiosk’s own, and known again after a restart', () => {
  const book = new AccessBook(accessFile(folder));
  const token = book.add(PHONE);
  expect(Buffer.from(token, 'base64url').length).toBe(32);
  expect(readFileSync(file, 'utf8')).not.toContain(token);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  const again = new AccessBook(accessFile(folder));
  expect(again.byToken(token)).toMatchObject({ id: 'd1', number: 1, right: 'act' });
  expect(again.byToken(`${token}x`)).toBeUndefined();
  const hash = /[0-9a-f]{64}/.exec(readFileSync(file, 'utf8'))?.[0] ?? '';
  expect(again.byToken(hash)).toBeUndefined();
});

test('a number is given once, also after its device is gone', () => {
  const book = new AccessBook(accessFile(folder));
  book.add(PHONE);
  book.remove('d1');
  book.add({ ...PHONE, id: 'd2' });
  expect(book.devices.map(({ number }) => number)).toEqual([2]);
});

test('a PIN is kept as scrypt of it, salted', async () => {
  const [one, two] = await Promise.all([keptPin('2580'), keptPin('2580')]);
  expect(one.hash).not.toBe(two.hash);
  expect(JSON.stringify(one)).not.toContain('2580');
  expect(await Promise.all([isPin('2580', one), isPin('2581', one), isPin('', one)])).toEqual([
    true,
    false,
    false,
  ]);
});

test('a name out of the language itself has no PIN', () => {
  const book = new AccessBook(accessFile(folder));
  expect(['constructor', '__proto__', 'toString'].map((name) => book.pinOf(name))).toEqual([
    null,
    null,
    null,
  ]);
});

test.each(['{', '{"on":true}', ''])('a file that says %s lets nobody in and is left as it is', (text) => {
  new AccessBook(accessFile(folder)).turn(true);
  writeFileSync(file, text);
  const book = new AccessBook(accessFile(folder));
  expect([book.readable, book.on, book.devices]).toEqual([false, false, []]);
  expect(() => book.turn(true)).toThrow();
  book.keepSeen(1e12);
  expect(readFileSync(file, 'utf8')).toBe(text);
});

test('when a device was last heard of is kept with whatever is written, and else now and then', () => {
  const book = new AccessBook(accessFile(folder));
  book.add(PHONE);
  const onDisk = () => new AccessBook(accessFile(folder)).devices[0]?.lastSeenAtMs;
  book.saw('d1', 1000);
  book.keepSeen(1000);
  expect(onDisk()).toBe(1000);
  book.saw('d1', 2000);
  book.keepSeen(2000);
  expect(onDisk()).toBe(1000);
  book.keepSeen(1000 + 10 * 60_000);
  expect(onDisk()).toBe(2000);
});
