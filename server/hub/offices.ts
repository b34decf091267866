import { randomUUID } from 'node:crypto';
import { hashOf, isHashOf, newSecret } from '../security/secrets.ts';
import type { FarmClient, HubDatabase } from './database.ts';

/** An office that reads: of one farm, or of those that let it in, such as a veterinarian's. */
export interface Office {
  readonly office: string;
  readonly name: string;
  /** Farms that let it in once; whether one still does is the farm's to say. */
  readonly farms: readonly string[];
}

/** A farm as an office that is let in knows it. */
export interface FarmLetIn {
  /** Where it lies; `null` where nobody said. */
  readonly area: string | null;
  /** An IANA name; `null` where nobody said. */
  readonly timeZone: string | null;
  /** How many events its log holds. */
  readonly head: number;
}

/** Makes an office that no farm lets in yet; its key is in the answer and nowhere else. */
export async function makeOffice(
  database: HubDatabase,
  name: string,
): Promise<{ readonly office: string; readonly key: string }> {
  const office = randomUUID();
  const secret = newSecret();
  await database.asOffice(office, (client) =>
    client.query('INSERT INTO offices (office, name, key_hash, made_at) VALUES ($1, $2, $3, now())', [
      office,
      name,
      hashOf(secret),
    ]),
  );
  return { office, key: `${office}.${secret}` };
}

/** Closes an office: its key opens nothing any more. Answers whether there was one. */
export function closeOffice(database: HubDatabase, office: string): Promise<boolean> {
  return database.asOffice(office, async (client) => {
    const closed = 'UPDATE offices SET closed_at = now() WHERE office = $1 AND closed_at IS NULL';
    return (await client.query(closed, [office])).rowCount === 1;
  });
}

/** Lets an office read a farm. Throws where there is no such farm or no such office. */
export async function letIn(database: HubDatabase, farm: string, office: string): Promise<void> {
  // The office's list first: it lets nobody in, and without it a grant would never be found.
  await database.asOffice(office, async (client) => {
    const { rowCount } = await client.query('SELECT 1 FROM offices WHERE office = $1', [office]);
    if (rowCount !== 1) throw new Error(`there is no office ${office}`);
    await client.query('INSERT INTO office_farms (office, farm) VALUES ($1, $2) ON CONFLICT DO NOTHING', [
      office,
      farm,
    ]);
  });
  await database.asFarm(farm, async (client) => {
    await mustBeFarm(client, farm);
    await client.query(
      `INSERT INTO office_grants (farm, office, granted_at) VALUES ($1, $2, now())
       ON CONFLICT (farm, office) DO UPDATE SET granted_at = now(), withdrawn_at = NULL`,
      [farm, office],
    );
  });
}

/** Lets an office read a farm no more. Answers whether it did. */
export function shutOffice(database: HubDatabase, farm: string, office: string): Promise<boolean> {
  return database.asFarm(farm, async (client) => {
    const withdraw =
      'UPDATE office_grants SET withdrawn_at = now() WHERE farm = $1 AND office = $2 AND withdrawn_at IS NULL';
    return (await client.query(withdraw, [farm, office])).rowCount === 1;
  });
}

/** Says where a farm lies and by which clock it lives. Throws where there is no such farm. */
export function placeFarm(
  database: HubDatabase,
  farm: string,
  { area, timeZone }: Pick<FarmLetIn, 'area' | 'timeZone'>,
): Promise<void> {
  return database.asFarm(farm, async (client) => {
    await mustBeFarm(client, farm);
    await client.query('UPDATE farms SET area = $2, time_zone = $3 WHERE farm = $1', [farm, area, timeZone]);
  });
}

async function mustBeFarm(client: FarmClient, farm: string): Promise<void> {
  const { rowCount } = await client.query('SELECT 1 FROM farms WHERE farm = $1', [farm]);
  if (rowCount !== 1) throw new Error(`there is no farm ${farm}`);
}

/** The office of a key; `null` where the key is of none, or of one that was closed. */
export async function officeOf(database: HubDatabase, key: string): Promise<Office | null> {
  const [, office, secret] = /^([\w-]{1,64})\.([\w-]{43})$/.exec(key) ?? [];
  if (office === undefined || secret === undefined) return null;
  return database.asOffice(office, async (client) => {
    const { rows } = await client.query<{ name: string; key_hash: string }>({
      name: 'office',
      text: 'SELECT name, key_hash FROM offices WHERE office = $1 AND closed_at IS NULL',
      values: [office],
    });
    const [row] = rows;
    if (row === undefined || !isHashOf(row.key_hash, secret)) return null;
    const farms = await client.query<{ farm: string }>({
      name: 'office-farms',
      text: 'SELECT farm FROM office_farms WHERE office = $1 ORDER BY farm',
      values: [office],
    });
    return { office, name: row.name, farms: farms.rows.map(({ farm }) => farm) };
  });
}

/** A farm that lets an office in; `null` where it does not. It is asked for every page: the farm may change its mind. */
export function farmFor(database: HubDatabase, farm: string, office: string): Promise<FarmLetIn | null> {
  return database.asFarm(farm, async (client) => {
    const { rows } = await client.query<{ area: string | null; time_zone: string | null; head: string }>({
      name: 'farm-for-office',
      text: `SELECT area, time_zone, head FROM farms JOIN office_grants USING (farm)
             WHERE farm = $1 AND office = $2 AND withdrawn_at IS NULL`,
      values: [farm, office],
    });
    const [row] = rows;
    return row === undefined ? null : { area: row.area, timeZone: row.time_zone, head: Number(row.head) };
  });
}
