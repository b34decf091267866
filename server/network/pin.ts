import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { oneAtATime } from '../../core/in-turn.ts';
import type { KeptPin } from './access-file.ts';

/** Cost of scrypt (RFC 7914): 16 MB and a tenth of a second or so on a small board. */
const COST = { N: 16_384, r: 8, p: 1 };
const HASH_BYTES = 32;
const SALT_BYTES = 16;

/** One after the other: a burst of tries takes the memory of one. */
const inTurn = oneAtATime();

/** A PIN as it may be kept, under a salt of its own. */
export async function keptPin(pin: string): Promise<KeptPin> {
  const salt = randomBytes(SALT_BYTES);
  return { salt: salt.toString('base64'), hash: (await hashOf(pin, salt)).toString('base64') };
}

/** Whether a PIN is the one that was kept. */
export async function isPin(pin: string, { salt, hash }: KeptPin): Promise<boolean> {
  const kept = Buffer.from(hash, 'base64');
  const given = await hashOf(pin, Buffer.from(salt, 'base64'));
  return kept.length === given.length && timingSafeEqual(kept, given);
}

function hashOf(pin: string, salt: Buffer): Promise<Buffer> {
  return inTurn(
    () =>
      new Promise<Buffer>((resolve, reject) => {
        scrypt(pin, salt, HASH_BYTES, COST, (error, key) => (error === null ? resolve(key) : reject(error)));
      }),
  );
}
