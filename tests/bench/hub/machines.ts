import { readdirSync } from 'node:fs';
import { openHubDatabase } from '../../../server/hub/database.ts';
import { startHub } from '../../process/hub-process.ts';
import { startPostgres, type TestPostgres } from '../../server/make/postgres.ts';

/** A hub as it would run: the built program as a process, on a PostgreSQL that waits for the disk at each commit. */
export interface RunningHub {
  readonly postgres: TestPostgres;
  readonly address: string;
  readonly database: string;
  readonly pid: number;
  /** Ends the hub and starts it on another database. */
  moveTo(database: string): Promise<RunningHub>;
  /** Ends the hub; `all` ends the database with it. */
  stop(all: boolean): Promise<void>;
}

/** Starts a database and a hub on it. */
export async function startRunningHub(): Promise<RunningHub> {
  const postgres = await startPostgres(true);
  return startOn(postgres, await postgres.database());
}

async function startOn(postgres: TestPostgres, database: string): Promise<RunningHub> {
  const hub = await startHub({ BYRESIDE_HUB_DATABASE: database, BYRESIDE_HUB_PORT: '0' });
  const gone = new Promise((resolve) => hub.child.once('exit', resolve));
  const stop = async (all: boolean) => {
    hub.child.kill('SIGKILL');
    await gone;
    if (all) await postgres.stop();
  };
  return {
    postgres,
    address: hub.address,
    database,
    pid: hub.child.pid ?? 0,
    async moveTo(other) {
      await stop(false);
      return startOn(postgres, other);
    },
    stop,
  };
}

/** Opens a hub's database beside it, to let kiosks in. */
export const besideHub = ({ database }: RunningHub) => openHubDatabase(database, 2);

/** Files and sockets this process holds open. */
export const descriptors = (): number => readdirSync('/proc/self/fd').length;
