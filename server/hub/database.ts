import pg from 'pg';
import { HUB_MIGRATIONS } from './schema.ts';

/** A connection on which one farm's rows are seen, or one office's. */
export type FarmClient = Pick<pg.PoolClient, 'query'>;

/** The hub's database. */
export interface HubDatabase {
  /** Runs work on one farm's rows, all or nothing. Throws where the work or the database does. */
  asFarm<T>(farm: string, work: (client: FarmClient) => Promise<T>): Promise<T>;
  /** Runs work on what belongs to one office, all or nothing. Throws where the work or the database does. */
  asOffice<T>(office: string, work: (client: FarmClient) => Promise<T>): Promise<T>;
  close(): Promise<void>;
}

/** A statement that takes longer is given up: the kiosk asks again. */
const LONGEST_STATEMENT_MS = 10_000;

/**
 * Connects to a PostgreSQL database and brings its schema up to date.
 *
 * Throws where it cannot be reached, is newer than this program, or is opened by a role that no rule of rows holds back.
 */
export async function openHubDatabase(url: string, connections = 8): Promise<HubDatabase> {
  const pool = new pg.Pool({
    connectionString: url,
    max: connections,
    statement_timeout: LONGEST_STATEMENT_MS,
    idle_in_transaction_session_timeout: LONGEST_STATEMENT_MS,
    connectionTimeoutMillis: LONGEST_STATEMENT_MS,
    application_name: 'byreside-hub',
  });
  // A connection that the server closes is taken out of the pool; the next request opens another. One that is at work
  // when it is closed tells of it twice: to the statement, and as an event that would end this program.
  pool.on('error', () => {});
  pool.on('connect', (client) => client.on('error', () => {}));
  try {
    await refuseFreeRole(pool);
    await bringUpToDate(pool);
  } catch (error) {
    await pool.end();
    throw error;
  }
  return {
    asFarm: (farm, work) => inTransaction(pool, work, only('byreside.farm', farm)),
    asOffice: (office, work) => inTransaction(pool, work, only('byreside.office', office)),
    close: () => pool.end(),
  };
}

/** SQL that opens the rows of one farm or office, until the transaction ends; a plain SET, since engines of many machines pass that on. */
const only = (setting: 'byreside.farm' | 'byreside.office', value: string) =>
  `SET LOCAL ${setting} = ${pg.escapeLiteral(value)}`;

/** Runs work in a transaction; `first` is sent with its beginning, since what a statement costs most is the way there. */
async function inTransaction<T>(
  pool: pg.Pool,
  work: (client: pg.PoolClient) => Promise<T>,
  first = '',
): Promise<T> {
  const client = await pool.connect();
  try {
    await client.query(`BEGIN; ${first}`);
    const done = await work(client);
    await client.query('COMMIT');
    client.release();
    return done;
  } catch (error) {
    // A connection that cannot even take back is worth nothing any more.
    const broken = await client.query('ROLLBACK').then(
      () => false,
      () => true,
    );
    client.release(broken);
    throw error;
  }
}

async function refuseFreeRole(pool: pg.Pool): Promise<void> {
  const { rows } = await pool.query<{ free: boolean }>(
    'SELECT rolsuper OR rolbypassrls AS free FROM pg_roles WHERE rolname = current_user',
  );
  if (rows[0]?.free !== false)
    throw new Error(
      'the database is opened by a superuser, whom no row security holds back: give the hub a role of its own',
    );
}

async function bringUpToDate(pool: pg.Pool): Promise<void> {
  await pool.query(
    'CREATE TABLE IF NOT EXISTS hub_schema (one INTEGER PRIMARY KEY, version INTEGER NOT NULL)',
  );
  await pool.query('INSERT INTO hub_schema (one, version) VALUES (1, 0) ON CONFLICT (one) DO NOTHING');
  await inTransaction(pool, async (client) => {
    // Two hubs that start at once: the second waits for the first and finds nothing to do.
    const { rows } = await client.query<{ version: number }>(
      'SELECT version FROM hub_schema WHERE one = 1 FOR UPDATE',
    );
    const from = rows[0]?.version ?? 0;
    if (from > HUB_MIGRATIONS.length)
      throw new Error(
        `the database is at version ${from}, this program knows ${HUB_MIGRATIONS.length}: update it`,
      );
    for (const step of HUB_MIGRATIONS.slice(from)) await client.query(step);
    await client.query('UPDATE hub_schema SET version = $1 WHERE one = 1', [HUB_MIGRATIONS.length]);
  });
}
