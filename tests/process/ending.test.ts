import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** A thread in a single call of the database that never returns, as a long check of it is; `ready` once it is in it. */
const BUSY_THREAD = `
  const { Worker } = await import('node:worker_threads');
  new Worker(\`
    const Database = require(process.versions.napi >= 10 ? 'better-sqlite3' : 'better-sqlite3-node20');
    require('node:worker_threads').parentPort.postMessage('begun');
    new Database(':memory:').prepare(
      'WITH RECURSIVE n(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM n) SELECT count(*) FROM n').get();
  \`, { eval: true, execArgv: [] }).once('message', () => console.log('ready'));`;

/** Sends SIGTERM to a process that ends by `stop`, and tells what ended it and after how many milliseconds. */
async function ended(stop: string, before: string) {
  const script = `
    const { runnerImport } = await import('vite');
    const { endBy } = (await runnerImport('server/ending.ts', { configFile: false })).module;
    process.once('SIGTERM', (signal) => endBy(signal, ${stop}));
    setInterval(() => {}, 1000);
    ${before}`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', script], {
    cwd: ROOT,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    await Promise.race([once(child.stdout, 'data'), once(child, 'exit').then(failed)]);
    const asked = performance.now();
    child.kill('SIGTERM');
    const [, signal] = await once(child, 'exit');
    return { signal, afterMs: performance.now() - asked };
  } finally {
    child.kill('SIGKILL');
  }
}

function failed(): never {
  throw new Error('the process ended before it was asked to');
}

// A machine that is busy with all other tests needs a while to start and to end a process.
test('a check of the database under way does not keep the kiosk from ending', async () => {
  const { signal } = await ended('async () => {}', BUSY_THREAD);
  expect(signal).toBe('SIGTERM');
}, 30_000);

test('a stop that fails ends it at once', async () => {
  const { signal, afterMs } = await ended('() => Promise.reject(new Error("no"))', "console.log('ready')");
  expect(signal).toBe('SIGTERM');
  expect(afterMs).toBeLessThan(7000);
}, 30_000);

test('a stop that hangs ends it after eight seconds', async () => {
  const { signal, afterMs } = await ended('() => new Promise(() => {})', "console.log('ready')");
  expect(signal).toBe('SIGTERM');
  expect(afterMs).toBeGreaterThan(7000);
}, 30_000);
