import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** What streaming one kind of file did to the memory of a process that did nothing else. */
export interface Streamed {
  readonly bytes: number;
  readonly seconds: number;
  /** Resident bytes once the first megabyte was out, and the most there ever were after it. */
  readonly atFirst: number;
  readonly most: number;
}

/**
 * Streams a kind of file from a database in a process of its own, at most so many bytes of it, reading as fast as it comes.
 *
 * A process of its own, since a heap that other tables have filled would hide what the stream adds to it.
 */
export function streamedApart(path: string, kind: string, mostBytes: number): Streamed {
  const script = fileURLToPath(new URL('./stream-one.mjs', import.meta.url));
  const { stdout, stderr, status } = spawnSync(process.execPath, [script, path, kind, String(mostBytes)], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`streaming ${kind} ended with ${status}: ${stderr}`);
  return JSON.parse(stdout.trim().split('\n').at(-1) ?? '');
}
