import { randomUUID } from 'node:crypto';
import { hashOf, isHashOf, newSecret } from '../security/secrets.ts';
import type { FarmClient, HubDatabase } from './database.ts';
import type { Invitation } from './wire.ts';

/** A kiosk that is let in, and what it was called there when it asked last. */
export interface Admitted {
  readonly farm: string;
  readonly credential: string;
  /** The kiosk that used the credential last; `null` where none did. */
  readonly kiosk: string | null;
}

/** What a request says it comes from. */
export interface Claim {
  readonly farm: string;
  readonly credential: string;
  readonly key: string;
}

/** One kiosk that was invited. */
export interface Invited {
  readonly name: string;
  readonly credential: string;
  readonly joined: boolean;
  readonly revoked: boolean;
}

/** What a farm may be called at a hub. */
export const FARM_NAME = /^[a-z0-9-]{1,64}$/;

/** The header by which a kiosk is known. */
export function bearerOf({ farm, credential, key }: Pick<Invitation, 'farm' | 'credential' | 'key'>): string {
  return `Bearer ${farm}.${credential}.${key}`;
}

/** Reads who a request says it is from; `null` where it says nothing of the kind. */
export function claimIn(header: string | undefined): Claim | null {
  const [, farm, credential, key] =
    /^Bearer ([\w-]{1,64})\.([\w-]{1,64})\.([\w-]{43})$/.exec(header ?? '') ?? [];
  return farm === undefined || credential === undefined || key === undefined
    ? null
    : { farm, credential, key };
}

/** Nobody that is let in asks, or nobody that still is. */
export class NotLetIn extends Error {
  readonly why: 'unknown-kiosk' | 'revoked';
  constructor(why: NotLetIn['why']) {
    super(why);
    this.why = why;
  }
}

/** Admits who asks, on a connection that sees the farm claimed and no other. Throws {@link NotLetIn}. */
export async function admit(client: FarmClient, { farm, credential, key }: Claim): Promise<Admitted> {
  const { rows } = await client.query<{ key_hash: string; revoked: boolean; kiosk: string | null }>({
    name: 'credential',
    text: `SELECT key_hash, revoked_at IS NOT NULL AS revoked, kiosk FROM credentials
           WHERE farm = $1 AND credential = $2`,
    values: [farm, credential],
  });
  const [row] = rows;
  if (row === undefined || !isHashOf(row.key_hash, key)) throw new NotLetIn('unknown-kiosk');
  if (row.revoked) throw new NotLetIn('revoked');
  return { farm, credential, kiosk: row.kiosk };
}

/** Lets a kiosk in: the key is in the invitation and nowhere else. Throws on a farm's name that is none. */
export async function invite(
  database: HubDatabase,
  farm: string,
  name: string,
  { hub, ca }: Pick<Invitation, 'hub' | 'ca'>,
): Promise<Invitation> {
  if (!FARM_NAME.test(farm))
    throw new Error(`"${farm}" is no name of a farm: small letters, digits and dashes`);
  const credential = randomUUID();
  const key = newSecret();
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
  { farm, credential, kiosk: before }: Admitted,
  kiosk: string,
): Promise<Record<string, string>> {
  if (kiosk !== before)
    await client.query({
      name: 'kiosk-seen',
      text: 'UPDATE credentials SET kiosk = $3 WHERE farm = $1 AND credential = $2',
      values: [farm, credential, kiosk],
    });
  const { rows } = await client.query<{ kiosk: string; name: string }>({
    name: 'kiosks',
    text: 'SELECT kiosk, name FROM credentials WHERE farm = $1 AND kiosk IS NOT NULL ORDER BY invited_at',
    values: [farm],
  });
  return Object.fromEntries(rows.map((row) => [row.kiosk, row.name]));
}
