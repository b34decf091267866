import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** A new secret of 256 random bits, as 43 letters, digits, dashes and underlines. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

/** What is kept of a secret. One of 256 random bits needs no slow hash: it cannot be guessed, with or without one. */
export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

/** Whether a hash is that of a secret; takes as long whatever differs. */
export function isHashOf(hash: string, secret: string): boolean {
  return timingSafeEqual(Buffer.from(hash), Buffer.from(hashOf(secret)));
}
