import { afterAll, beforeAll, expect, test } from 'vitest';
import { hasPostgres, startPostgres, type TestPostgres } from '../make/postgres.ts';
import { runSchedules } from './schedules.ts';

let postgres: TestPostgres;
beforeAll(async () => {
  if (hasPostgres) postgres = await startPostgres();
}, 60_000);
afterAll(async () => postgres?.stop());

test.runIf(hasPostgres)(
  'kiosks with real records and a real hub, cut and crashed at random, come to hold the same: nothing lost, nothing twice',
  async () => {
    const report = await runSchedules(postgres, 4, 1);
    expect(report).toMatchObject({ lost: [], doubled: [], apart: [] });
    expect(report.cuts).toBeGreaterThan(0);
    expect(report.told).toBeGreaterThan(40);
  },
  60_000,
);
