import type { Framed, Framer } from '../../../hardware/serial/framed.ts';

/** All that a framer gives for a row of chunks. */
export function pushAll(framer: Framer, chunks: readonly Uint8Array[]): Framed[] {
  return chunks.flatMap((chunk) => framer.push(chunk));
}

/** The bytes that frames and discards stand for; a frame has two framing bytes beside its text. */
export function accountedFor(framed: readonly Framed[]): number {
  return framed.reduce((sum, one) => sum + (one.kind === 'line' ? one.text.length + 2 : one.bytes), 0);
}
