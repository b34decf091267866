import { runApart } from '../apart.ts';

/** What streaming one kind of file did to the memory of a process that did nothing else. */
export interface Streamed {
  readonly bytes: number;
  readonly seconds: number;
  /** Resident bytes once the first megabyte was out, and the most there ever were after it. */
  readonly atFirst: number;
  readonly most: number;
}

/** Streams a kind of file from a database in a process of its own, at most so many bytes of it, reading as fast as it comes. */
export function streamedApart(path: string, kind: string, mostBytes: number): Promise<Streamed> {
  return runApart<Streamed>('ten-years/stream-one.ts', 'streamOne', [path, kind, mostBytes]).done;
}
