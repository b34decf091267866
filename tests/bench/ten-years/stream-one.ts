import { EXPORTS, ExportName } from '../../../server/exports/kinds.ts';
import { textStream } from '../../../server/exports/text-stream.ts';
import { testBarn } from '../../server/make/test-barn.ts';
import type { Streamed } from './export-memory.ts';
import { END_MS } from './years.ts';

const MEGABYTE = 1024 * 1024;

/** Streams a kind of file from a database, at most so many bytes of it. */
export async function streamOne(path: string, kind: string, mostBytes: number): Promise<Streamed> {
  const { barn, store, clock } = testBarn(path);
  clock.wallMs = END_MS;
  const asked = { fromMs: -8.64e15, toMs: 8.64e15, animalId: null, name: 'all' };
  const pieces = EXPORTS[ExportName.parse(kind)].pieces(barn.context, asked);
  const began = performance.now();
  let [bytes, looked, atFirst, most] = [0, 0, 0, 0];
  for await (const chunk of textStream(pieces)) {
    bytes += chunk.length;
    if (bytes - looked < MEGABYTE) continue;
    looked = bytes;
    const { rss } = process.memoryUsage();
    if (atFirst === 0) atFirst = rss;
    most = Math.max(most, rss);
    if (bytes >= mostBytes) break;
  }
  store.close();
  return { bytes, seconds: (performance.now() - began) / 1000, atFirst, most };
}
