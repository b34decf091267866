import { randomUUID } from 'node:crypto';
import { hashOf, isHashOf, newSecret } from '../security/secrets.ts';
import type { HubDatabase } from './database.ts';

/** An office that reads: of one farm, or of those that let it in, such as a veterinarian's. */
export interface Office {
  readonly office: string;
  readonly name: string;
  /** Farms that let it in once; whether one still does is the farm's to say. */
  readonly farms: readonly string[];
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
