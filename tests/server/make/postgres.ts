import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';

/** A PostgreSQL server of a test, on loopback, with its files in a temporary folder. */
export interface TestPostgres {
  /** Makes a new database and answers its address, as a role that is no superuser. */
  database(): Promise<string>;
  /** Makes a copy of a database as it is, under an address of its own. Nobody may be connected to it. */
  copyOf(url: string): Promise<string>;
  /** The address of a database for the superuser, whom no row security holds back. */
  superuserUrl(url: string): string;
  /** Opens a connection as the superuser. */
  asSuperuser(url: string): Promise<pg.Client>;
  /** Ends the server as a crash would: an immediate shutdown, every process at once and no checkpoint. */
  crash(): Promise<void>;
  /** Starts a server that crashed on its files again; it recovers from its log. */
  startAgain(): Promise<void>;
  stop(): Promise<void>;
}

const VERSIONS = '/usr/lib/postgresql';
const ROLE = 'byreside';

function programs(): string | null {
  const newest = (existsSync(VERSIONS) ? readdirSync(VERSIONS) : []).sort((a, b) => Number(b) - Number(a));
  return (
    newest.map((version) => join(VERSIONS, version, 'bin')).find((bin) => existsSync(join(bin, 'initdb'))) ??
    null
  );
}

/** Whether PostgreSQL is on this machine. */
export const hasPostgres = programs() !== null;

/** Starts a server as an unprivileged user; `durable` waits for the disk at each commit, as a real one does. */
export async function startPostgres(durable = false): Promise<TestPostgres> {
  const bin = programs();
  if (bin === null) throw new Error('PostgreSQL is missing: apt-get install postgresql');
  const folder = mkdtempSync(join(tmpdir(), 'postgres-'));
  const who = unprivileged();
  if (who !== null) chownSync(folder, who.uid, who.gid);
  const run = { ...who, cwd: folder, stdio: 'pipe' as const };
  const data = join(folder, 'data');
  const made = spawnSync(
    join(bin, 'initdb'),
    ['-D', data, '-U', 'postgres', '-A', 'trust', '--no-sync', '--locale=C', '-E', 'UTF8'],
    run,
  );
  if (made.status !== 0) throw new Error(`initdb failed: ${made.stderr}`);
  const port = await freePort();
  const settings = {
    listen_addresses: '127.0.0.1',
    unix_socket_directories: folder,
    fsync: durable ? 'on' : 'off',
    shared_buffers: '64MB',
  };
  const serve = () =>
    spawn(
      join(bin, 'postgres'),
      [
        '-D',
        data,
        '-p',
        String(port),
        ...Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`]),
      ],
      run,
    );
  let child = serve();
  const address = (database: string, role = ROLE) => `postgres://${role}@127.0.0.1:${port}/${database}`;
  /** Signals the server: SIGINT does not wait for who is still connected, SIGQUIT does not even tidy up. */
  const end = (signal: 'SIGINT' | 'SIGQUIT') => {
    const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
    if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
    child.kill(signal);
    return ended;
  };
  try {
    await untilReady(address('postgres', 'postgres'), child);
    await asSuper(address('postgres', 'postgres'), `CREATE ROLE ${ROLE} LOGIN`);
  } catch (error) {
    child.kill('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
    throw error;
  }
  let databases = 0;
  const make = async (from: string) => {
    const name = `hub_${++databases}`;
    await asSuper(address('postgres', 'postgres'), `CREATE DATABASE ${name} OWNER ${ROLE} TEMPLATE ${from}`);
    return address(name);
  };
  return {
    database: () => make('template0'),
    copyOf: (url) => make(new URL(url).pathname.slice(1)),
    superuserUrl,
    async asSuperuser(url) {
      const client = new pg.Client({ connectionString: superuserUrl(url) });
      await client.connect();
      return client;
    },
    crash: () => end('SIGQUIT'),
    async startAgain() {
      child = serve();
      await untilReady(address('postgres', 'postgres'), child);
    },
    async stop() {
      await end('SIGINT');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

const superuserUrl = (url: string): string => url.replace(ROLE, 'postgres');

/** PostgreSQL refuses to run as root: Debian makes it a user of its own. */
function unprivileged(): { uid: number; gid: number } | null {
  if (process.getuid?.() !== 0) return null;
  const id = (what: string) => Number(spawnSync('id', [what, 'postgres']).stdout);
  return { uid: id('-u'), gid: id('-g') };
}

async function asSuper(url: string, sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(sql);
  } finally {
    await client.end();
  }
}

async function untilReady(url: string, child: ChildProcess): Promise<void> {
  for (let tries = 0; ; tries += 1) {
    try {
      return await asSuper(url, 'SELECT 1');
    } catch (error) {
      if (child.exitCode !== null || tries > 600) throw error;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}
