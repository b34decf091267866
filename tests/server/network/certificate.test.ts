import { createPrivateKey, X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { ownCertificate } from '../../../server/network/certificate.ts';

const DAY = 86_400_000;
const NOW = Date.UTC(2027, 3, 12);
const NAMES = ['barn.local', '192.168.1.20'];
const folders: string[] = [];
function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'cert-'));
  folders.push(made);
  return join(made, 'network');
}
afterEach(() => {
  for (const each of folders.splice(0)) rmSync(each, { recursive: true });
});

test('a board makes its own, keeps it to itself, and shows the same one again', async () => {
  const at = folder();
  const made = await ownCertificate(at, NAMES, NOW);
  const read = new X509Certificate(made.cert);
  expect(read.subjectAltName).toBe('DNS:barn.local, IP Address:192.168.1.20');
  expect(read.checkPrivateKey(createPrivateKey(made.key))).toBe(true);
  expect(read.verify(read.publicKey)).toBe(true);
  expect(read.ca).toBe(false);
  expect(read.fingerprint256).toBe(made.fingerprint);
  for (const file of ['key.pem', 'certificate.pem'])
    expect(statSync(join(at, file)).mode & 0o777).toBe(0o600);
  expect(statSync(at).mode & 0o777).toBe(0o700);
  expect(await ownCertificate(at, NAMES, NOW + 700 * DAY)).toEqual(made);
});

test('it is made anew a month before it ends, where its days have not begun, and where it cannot be read', async () => {
  const at = folder();
  const first = await ownCertificate(at, NAMES, NOW);
  const later = await ownCertificate(at, NAMES, NOW + 771 * DAY);
  expect(later.fingerprint).not.toBe(first.fingerprint);
  const before = await ownCertificate(at, NAMES, NOW);
  expect(before.fingerprint).not.toBe(later.fingerprint);
  writeFileSync(join(at, 'certificate.pem'), 'nothing');
  const again = await ownCertificate(at, NAMES, NOW);
  expect(readFileSync(join(at, 'certificate.pem'), 'utf8')).toBe(again.cert);
});

test('a key without its certificate, as a power cut leaves them, is made anew', async () => {
  const at = folder();
  const first = await ownCertificate(at, NAMES, NOW);
  const other = await ownCertificate(folder(), NAMES, NOW);
  writeFileSync(join(at, 'key.pem'), other.key);
  const again = await ownCertificate(at, NAMES, NOW);
  expect(again.fingerprint).not.toBe(first.fingerprint);
  expect(new X509Certificate(again.cert).checkPrivateKey(createPrivateKey(again.key))).toBe(true);
  expect(readFileSync(join(at, 'key.pem'), 'utf8')).toBe(again.key);
});
