import type pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openHubDatabase } from '../../../server/hub/database.ts';
import { hasPostgres, startPostgres, type TestPostgres } from '../make/postgres.ts';

/** By table, the column its rows are spread by on an engine of many machines. */
const SPREAD_BY: Readonly<Record<string, string>> = {
  farms: 'farm',
  credentials: 'farm',
  lives: 'farm',
  events: 'farm',
  office_grants: 'farm',
  offices: 'office',
  office_farms: 'office',
};
/** One row that says how new the schema is. */
const NOT_SPREAD = ['hub_schema'];

describe.runIf(hasPostgres)('the schema of the hub', () => {
  let postgres: TestPostgres;
  let client: pg.Client;
  beforeAll(async () => {
    postgres = await startPostgres();
    const url = await postgres.database();
    await (await openHubDatabase(url)).close();
    client = await postgres.asSuperuser(url);
  }, 60_000);
  afterAll(async () => {
    await client?.end();
    await postgres?.stop();
  });

  const tables = async () =>
    (
      await client.query<{ name: string; guarded: boolean }>(
        `SELECT relname AS name, relrowsecurity AND relforcerowsecurity AS guarded FROM pg_class
         WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace ORDER BY relname`,
      )
    ).rows;

  test('every table is spread by a column, and guarded by it', async () => {
    const found = await tables();
    expect(found.map(({ name }) => name)).toEqual([...Object.keys(SPREAD_BY), ...NOT_SPREAD].sort());
    const unguarded = found.filter(({ guarded }) => !guarded).map(({ name }) => name);
    expect(unguarded).toEqual(NOT_SPREAD);
    const { rows } = await client.query<{ name: string; rule: string; check: string }>(
      'SELECT tablename AS name, qual AS rule, with_check AS check FROM pg_policies',
    );
    for (const [name, column] of Object.entries(SPREAD_BY)) {
      const policies = rows.filter((each) => each.name === name);
      const only = `(${column} = current_setting('byreside.${column}'::text, true))`;
      expect(policies).toEqual([{ name, rule: only, check: only }]);
    }
  });

  test('every key, and every reference between tables, begins with it, and no number is drawn from one place', async () => {
    const { rows } = await client.query<{
      name: string;
      kind: string;
      first: string;
      other: string | null;
      otherFirst: string | null;
    }>(
      `SELECT one.relname AS name, contype AS kind, mine.attname AS first, other.relname AS other, theirs.attname AS "otherFirst"
       FROM pg_constraint JOIN pg_class AS one ON one.oid = conrelid
       JOIN pg_attribute AS mine ON mine.attrelid = conrelid AND mine.attnum = conkey[1]
       LEFT JOIN pg_class AS other ON other.oid = nullif(confrelid, 0)
       LEFT JOIN pg_attribute AS theirs ON theirs.attrelid = confrelid AND theirs.attnum = confkey[1]
       WHERE contype IN ('p', 'u', 'f') AND one.relnamespace = 'public'::regnamespace`,
    );
    const keys = rows.filter(({ name }) => !NOT_SPREAD.includes(name));
    expect(
      keys
        .filter(({ kind }) => kind === 'p')
        .map(({ name }) => name)
        .sort(),
    ).toEqual(Object.keys(SPREAD_BY).sort());
    for (const { name, first, other, otherFirst } of keys) {
      expect([name, first]).toEqual([name, SPREAD_BY[name]]);
      if (other !== null) expect([other, otherFirst]).toEqual([other, first]);
    }
    expect((await client.query("SELECT 1 FROM pg_class WHERE relkind = 'S'")).rowCount).toBe(0);
  });
});
