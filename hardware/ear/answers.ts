import { z } from 'zod';
import type { Decoded, PathPart } from '../../core/speech/decoded.ts';

const path = z
  .array(z.tuple([z.string(), z.int(), z.int(), z.number()]))
  .transform((parts): PathPart[] => parts.map(([word, from, to, acoustic]) => ({ word, from, to, acoustic })))
  .nullable();

/** What the listener says on a line of its own. */
const Answer = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('ready') }),
  z.object({ kind: z.literal('grammar'), of: z.enum(['commands', 'rivals']), ok: z.boolean() }),
  z.object({ kind: z.literal('so-far'), frames: z.int(), commands: path }),
  z.object({ kind: z.literal('again'), ok: z.boolean(), path }),
  z.object({ kind: z.literal('ended'), frames: z.int(), commands: path, rivals: path, phones: path }),
]);
/** What the listener says on a line of its own. */
export type Answer =
  | { readonly kind: 'ready' }
  | { readonly kind: 'grammar'; readonly of: 'commands' | 'rivals'; readonly ok: boolean }
  | { readonly kind: 'so-far'; readonly frames: number; readonly commands: readonly PathPart[] | null }
  | { readonly kind: 'again'; readonly ok: boolean; readonly path: readonly PathPart[] | null }
  | ({ readonly kind: 'ended' } & Decoded);

/** Reads a line of the listener, or `null` where it is none: its process is then not to be trusted further. */
export function readAnswer(line: string): Answer | null {
  try {
    return Answer.parse(JSON.parse(line));
  } catch {
    return null;
  }
}
