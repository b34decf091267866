import { createPrivateKey, generateKeyPairSync, randomBytes, X509Certificate } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { join } from 'node:path';
import { writeWhole } from '../config/write-whole.ts';

const DAY_MS = 86_400_000;
/** Phones take no certificate that lasts longer than 825 days, even where its owner trusts it (from memory). */
const LASTS_DAYS = 800;
/** One that ends sooner than this is made anew. */
const RENEW_DAYS = 30;

/** The board's key and certificate, PEM, and the SHA-256 of the certificate by which a person knows it. */
export interface OwnCertificate {
  readonly key: string;
  readonly cert: string;
  readonly fingerprint: string;
}

/**
 * The certificate of this board: the one kept in the folder, or, where there is none, it ends within a month or its days
 * have not begun, a new one for these names and addresses. Throws when the disk refuses.
 */
export async function ownCertificate(
  folder: string,
  names: readonly string[],
  wallMs: number,
): Promise<OwnCertificate> {
  const keyFile = join(folder, 'key.pem');
  const certFile = join(folder, 'certificate.pem');
  if (existsSync(keyFile) && existsSync(certFile)) {
    const kept = { key: readFileSync(keyFile, 'utf8'), cert: readFileSync(certFile, 'utf8') };
    const read = readCertificate(kept.cert);
    if (read !== null && isGoodFor(read, wallMs) && belongs(read, kept.key))
      return { ...kept, fingerprint: read.fingerprint256 };
  }
  const made = await makeCertificate(names, wallMs);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  writeWhole(keyFile, made.key, 0o600);
  writeWhole(certFile, made.cert, 0o600);
  return made;
}

function readCertificate(pem: string): X509Certificate | null {
  try {
    return new X509Certificate(pem);
  } catch {
    return null;
  }
}

/** Whether key and certificate are a pair: the power may have gone between the writing of one and of the other. */
function belongs(certificate: X509Certificate, key: string): boolean {
  try {
    return certificate.checkPrivateKey(createPrivateKey(key));
  } catch {
    return false;
  }
}

function isGoodFor({ validFrom, validTo }: X509Certificate, wallMs: number): boolean {
  return Date.parse(validFrom) <= wallMs && wallMs < Date.parse(validTo) - RENEW_DAYS * DAY_MS;
}

/** A new key with a certificate that it signs itself. */
async function makeCertificate(names: readonly string[], wallMs: number): Promise<OwnCertificate> {
  // Fetched only by a board that is on a network at all.
  const { default: forge } = await import('node-forge');
  const { publicKey, privateKey } = generateKeyPairSync('rsa', {
    modulusLength: 2048,
    publicKeyEncoding: { type: 'spki', format: 'pem' },
    privateKeyEncoding: { type: 'pkcs8', format: 'pem' },
  });
  const certificate = forge.pki.createCertificate();
  certificate.publicKey = forge.pki.publicKeyFromPem(publicKey);
  // Positive whatever the first bit: a serial number below zero is refused (RFC 5280, 4.1.2.2).
  certificate.serialNumber = `00${randomBytes(15).toString('hex')}`;
  certificate.validity.notBefore = new Date(wallMs - DAY_MS);
  certificate.validity.notAfter = new Date(wallMs + LASTS_DAYS * DAY_MS);
  const itself = [{ name: 'commonName', value: 'Byreside' }];
  certificate.setSubject(itself);
  certificate.setIssuer(itself);
  certificate.setExtensions([
    { name: 'basicConstraints', cA: false, critical: true },
    { name: 'keyUsage', digitalSignature: true, keyEncipherment: true, critical: true },
    { name: 'extKeyUsage', serverAuth: true },
    {
      name: 'subjectAltName',
      altNames: names.map((name) => (isIP(name) === 0 ? { type: 2, value: name } : { type: 7, ip: name })),
    },
  ]);
  certificate.sign(forge.pki.privateKeyFromPem(privateKey), forge.md.sha256.create());
  const cert = forge.pki.certificateToPem(certificate);
  return { key: privateKey, cert, fingerprint: new X509Certificate(cert).fingerprint256 };
}
