import { createHash, randomBytes, randomUUID, timingSafeEqual } from 'node:crypto';
import type { FarmClient, HubDatabase } from './database.ts';
import type { Invitation } from './wire.ts';

/** Who asks: a kiosk of a farm, or why nobody that is let in. */
export type Caller =
  | { readonly ok: true; readonly farm: string; readonly credential: string }
  | { readonly ok: false; readonly why: 'unknown-kiosk' | 'revoked' };

/** One kiosk that was invited. */
export interface Invited {
  readonly name: string;
  readonly credential: string;
  readonly joined: boolean;
  readonly revoked: boolean;
}

const FARM = /^[a-z0-9-]{1,64}$/;

/** A secret of 256 random bits needs no slow hash: it cannot be guessed, with or without one. */
const hashOf = (key: string) => createHash('sha256').update(key).digest('hex');

/** The header by which a kiosk is known. */
export function bearerOf({ farm, credential, key }: Pick<Invitation, 'farm' | 'credential' | 'key'>): string {
  return `Bearer ${farm}.${credential}.${key}`;
}

/** Tells who a request is from. The farm stands in the header, so that no statement looks beyond one farm's rows. */
export async function callerOf(database: HubDatabase, header: string | undefined): Promise<Caller> {
  const [, farm, credential, key] =
    /^Bearer ([\w-]{1,64})\.([\w-]{1,64})\.([\w-]{43})$/.exec(header ?? '') ?? [];
  if (farm === undefined || credential === undefined || key === undefined)
    return { ok: false, why: 'unknown-kiosk' };
  return database.asFarm(farm, async (client): Promise<Caller> => {
    const { rows } = await client.query<{ key_hash: string; revoked: boolean }>({
      name: 'credential',
      text: `SELECT key_hash, revoked_at IS NOT NULL AS revoked FROM credentials
             WHERE farm = $1 AND credential = $2`,
      values: [farm, credential],
    });
    const [row] = rows;
    const same = row !== undefined && timingSafeEqual(Buffer.from(row.key_hash), Buffer.from(hashOf(key)));
    if (!same) return { ok: false, why: 'unknown-kiosk' };
    return row.revoked ? { ok: false, why: 'revoked' } : { ok: true, farm, credential };
  });
}

/** A kiosk was shut out while what it had asked for was on its way. */
export class ShutOut extends Error {}

/** Throws {@link ShutOut} where a caller was shut out since: a kiosk waits for news for long. */
export async function mustBeIn(
  client: FarmClient,
  { farm, credential }: { readonly farm: string; readonly credential: string },
): Promise<void> {
  const { rows } = await client.query({
    name: 'still-in',
    text: 'SELECT 1 FROM credentials WHERE farm = $1 AND credential = $2 AND revoked_at IS NULL',
    values: [farm, credential],
  });
  if (rows.length === 0) throw new ShutOut();
}

/** Lets a kiosk in: the key is in the invitation and nowhere else. Throws on a farm's name that is none. */
export async function invite(
  database: HubDatabase,
  farm: string,
  name: string,
  { hub, ca }: Pick<Invitation, 'hub' | 'ca'>,
): Promise<Invitation> {
  if (!FARM.test(farm)) throw new Error(`"${farm}" is no name of a farm: small letters, digits and dashes`);
  const credential = randomUUID();
  const key = randomBytes(32).toString('base64url');
  await database.asFarm(farm, async (client) => {
    await client.query('INSERT INTO farms (farm) VALUES ($1) ON CONFLICT (farm) DO NOTHING', [farm]);
    await client.query(
      `INSERT INTO credentials (farm, credential, name, key_hash, invited_at) VALUES ($1, $2, $3, $4, now())`,
      [farm, credential, name, hashOf(key)],
    );
  });
  return { hub, farm, name, credential, key, ca };
}

/** Shuts out every credential of a name; answers how many that were. */
export function revoke(database: HubDatabase, farm: string, name: string): Promise<number> {
  return database.asFarm(farm, async (client) => {
    const { rowCount } = await client.query(
      `UPDATE credentials SET revoked_at = now() WHERE farm = $1 AND name = $2 AND revoked_at IS NULL`,
      [farm, name],
    );
    return rowCount ?? 0;
  });
}

/** The kiosks of a farm in the order they were invited. */
export function listInvited(database: HubDatabase, farm: string): Promise<Invited[]> {
  return database.asFarm(farm, async (client) => {
    const { rows } = await client.query<Invited>(
      `SELECT name, credential, kiosk IS NOT NULL AS joined, revoked_at IS NOT NULL AS revoked
       FROM credentials WHERE farm = $1 ORDER BY invited_at, credential`,
      [farm],
    );
    return rows;
  });
}

/** Remembers which kiosk uses a credential, and answers the names of all kiosks of the farm. */
export async function kiosksNow(
  client: FarmClient,
  { farm, credential }: { readonly farm: string; readonly credential: string },
  kiosk: string,
): Promise<Record<string, string>> {
  await client.query({
    name: 'kiosk-seen',
    text: `UPDATE credentials SET kiosk = $3 WHERE farm = $1 AND credential = $2 AND kiosk IS DISTINCT FROM $3`,
    values: [farm, credential, kiosk],
  });
  const { rows } = await client.query<{ kiosk: string; name: string }>({
    name: 'kiosks',
    text: 'SELECT kiosk, name FROM credentials WHERE farm = $1 AND kiosk IS NOT NULL ORDER BY invited_at',
    values: [farm],
  });
  return Object.fromEntries(rows.map((row) => [row.kiosk, row.name]));
}
