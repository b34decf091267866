import type { OfficeView } from '../../shared/farm.ts';
import type { FarmClient, HubDatabase } from './database.ts';
import type { Office } from './offices.ts';

/** A farm as an office that is let in knows it. */
export interface FarmLetIn {
  /** Where it lies; `null` where nobody said. */
  readonly area: string | null;
  /** An IANA name; `null` where nobody said. */
  readonly timeZone: string | null;
  /** How many events its log holds. */
  readonly head: number;
}

/** The most offices a farm is told of. */
const MOST_TOLD = 100;
/** The most farms that stand on an office's list: it may ask for names that are none. */
const MOST_ASKED = 10_000;

/**
 * Notes that an office asks to read a farm, which says so at its kiosk. Nothing tells whether there is such a farm: an office
 * must not find out which there are.
 */
export async function askFarm(
  database: HubDatabase,
  farm: string,
  { office, name }: Pick<Office, 'office' | 'name'>,
): Promise<void> {
  await noteFarm(database, farm, office);
  await database.asFarm(farm, async (client) => {
    await client.query(
      `INSERT INTO office_grants (farm, office, name, asked_at) SELECT farm, $2, $3, now() FROM farms WHERE farm = $1
       ON CONFLICT (farm, office) DO UPDATE SET name = $3, asked_at = now()`,
      [farm, office, name],
    );
  });
}

/** Lets an office read a farm, by the hub's operator. Throws where there is no such farm or no such office. */
export async function letIn(database: HubDatabase, farm: string, office: string): Promise<void> {
  const name = await noteFarm(database, farm, office);
  await database.asFarm(farm, async (client) => {
    const { rowCount } = await client.query(
      `INSERT INTO office_grants (farm, office, name, granted_at) SELECT farm, $2, $3, now() FROM farms WHERE farm = $1
       ON CONFLICT (farm, office) DO UPDATE SET name = $3, granted_at = now(), withdrawn_at = NULL, said_by = NULL`,
      [farm, office, name],
    );
    if (rowCount !== 1) throw new Error(`there is no farm ${farm}`);
  });
}

/** Lets an office read a farm no more, by the hub's operator. Answers whether it did. */
export function shutOffice(database: HubDatabase, farm: string, office: string): Promise<boolean> {
  return database.asFarm(farm, (client) => sayOffice(client, { farm, credential: null }, office, false));
}

/**
 * Puts a farm on an office's list of farms to ask: it lets nobody in, and without it a grant would never be found. Answers the
 * office's name; throws where there is no such office.
 */
function noteFarm(database: HubDatabase, farm: string, office: string): Promise<string> {
  return database.asOffice(office, async (client) => {
    const { rows } = await client.query<{ name: string }>('SELECT name FROM offices WHERE office = $1', [
      office,
    ]);
    const [row] = rows;
    if (row === undefined) throw new Error(`there is no office ${office}`);
    await client.query(
      `INSERT INTO office_farms (office, farm) SELECT $1, $2
       WHERE (SELECT count(*) FROM office_farms WHERE office = $1) < ${MOST_ASKED} ON CONFLICT DO NOTHING`,
      [office, farm],
    );
    return row.name;
  });
}

/** The offices that read a farm, or did, or ask to: those that ask first. */
export async function officesOf(client: FarmClient, farm: string): Promise<OfficeView[]> {
  const { rows } = await client.query<{
    office: string;
    name: string;
    state: OfficeView['state'];
    since: Date;
  }>({
    name: 'offices-of-farm',
    text: `SELECT office, coalesce(name, office) AS name, state,
             CASE state WHEN 'asks' THEN asked_at WHEN 'reads' THEN granted_at ELSE withdrawn_at END AS since
           FROM (SELECT *, CASE WHEN granted_at IS NOT NULL AND withdrawn_at IS NULL THEN 'reads'
                                WHEN withdrawn_at IS NULL OR asked_at > withdrawn_at THEN 'asks'
                                ELSE 'shut-out' END AS state
                 FROM office_grants WHERE farm = $1) AS told
           ORDER BY array_position(ARRAY['asks', 'reads', 'shut-out'], state), name, office LIMIT ${MOST_TOLD}`,
    values: [farm],
  });
  return rows.map(({ since, ...told }) => ({ ...told, since: since.toISOString() }));
}

/**
 * Lets an office that asked, or read before, read a farm, or no more; `credential` is the kiosk's that says so, `null` the
 * operator. Answers whether anything changed: an office that never asked is none of the farm's.
 */
export async function sayOffice(
  client: FarmClient,
  { farm, credential }: { readonly farm: string; readonly credential: string | null },
  office: string,
  reads: boolean,
): Promise<boolean> {
  const said = reads
    ? `granted_at = now(), withdrawn_at = NULL, said_by = $3
       WHERE farm = $1 AND office = $2 AND (granted_at IS NULL OR withdrawn_at IS NOT NULL)`
    : `withdrawn_at = now(), said_by = $3
       WHERE farm = $1 AND office = $2 AND (withdrawn_at IS NULL OR asked_at > withdrawn_at)`;
  const { rowCount } = await client.query(`UPDATE office_grants SET ${said}`, [farm, office, credential]);
  return rowCount === 1;
}

/** A farm that lets an office in; `null` where it does not. It is asked for every page: the farm may change its mind. */
export function farmFor(database: HubDatabase, farm: string, office: string): Promise<FarmLetIn | null> {
  return database.asFarm(farm, async (client) => {
    const { rows } = await client.query<{ area: string | null; time_zone: string | null; head: string }>({
      name: 'farm-for-office',
      text: `SELECT area, time_zone, head FROM farms JOIN office_grants USING (farm)
             WHERE farm = $1 AND office = $2 AND granted_at IS NOT NULL AND withdrawn_at IS NULL`,
      values: [farm, office],
    });
    const [row] = rows;
    return row === undefined ? null : { area: row.area, timeZone: row.time_zone, head: Number(row.head) };
  });
}

/** Says where a farm lies and by which clock it lives. Throws where there is no such farm. */
export function placeFarm(
  database: HubDatabase,
  farm: string,
  { area, timeZone }: Pick<FarmLetIn, 'area' | 'timeZone'>,
): Promise<void> {
  return database.asFarm(farm, async (client) => {
    const place = 'UPDATE farms SET area = $2, time_zone = $3 WHERE farm = $1';
    const { rowCount } = await client.query(place, [farm, area, timeZone]);
    if (rowCount !== 1) throw new Error(`there is no farm ${farm}`);
  });
}
