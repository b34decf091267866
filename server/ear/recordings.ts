import { mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bytesOf } from '../../hardware/ear/framing.ts';
import { EAR_RATE } from '../../hardware/ear/pcm.ts';
import { wavOf } from '../../hardware/mouth/wav.ts';

/** The most sound that is kept, in bytes: about ten minutes of speech. */
export const MOST_RECORDED_BYTES = 20 * 1024 * 1024;
/** Bytes before the samples of a WAV file. */
const HEADER_BYTES = 44;

/** Sound kept to find out why the kiosk mishears: one WAV file an utterance, named by time and what it was taken for. */
export interface Recordings {
  /** How much lies there, in bytes. */
  bytes(): number;
  /** Keeps the sound of one utterance, 16 kHz mono; the oldest give way to it. Throws when the disk refuses. */
  add(samples: Int16Array, atMs: number, takenFor: string): void;
  /** Takes all of it off the disk. Throws when the disk refuses. */
  wipe(): void;
}

/** The recordings in a folder, which is made with the first of them; `null` keeps nothing. */
export function createRecordings(folder: string | null, mostBytes = MOST_RECORDED_BYTES): Recordings {
  let files = folder === null ? [] : filesIn(folder);
  const bytes = () => files.reduce((sum, file) => sum + file.bytes, 0);
  return {
    bytes,
    add(samples, atMs, takenFor) {
      const size = HEADER_BYTES + samples.byteLength;
      if (folder === null || size > mostBytes) return;
      while (bytes() + size > mostBytes) {
        const [oldest, ...rest] = files;
        if (oldest === undefined) break;
        rmSync(join(folder, oldest.name), { force: true });
        files = rest;
      }
      mkdirSync(folder, { recursive: true });
      const when = new Date(atMs).toISOString().replaceAll(':', '-');
      const name = `${when} ${takenFor.replace(/[^a-z' -]/g, '').slice(0, 80)}.wav`;
      writeFileSync(join(folder, name), wavOf(bytesOf(samples), EAR_RATE).bytes);
      files = [...files.filter((file) => file.name !== name), { name, bytes: size }];
    },
    wipe() {
      if (folder !== null) rmSync(folder, { recursive: true, force: true });
      files = [];
    },
  };
}

/** What lies there from before, the oldest first: names begin with the time. */
function filesIn(folder: string): { name: string; bytes: number }[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith('.wav'))
      .sort()
      .map((name) => ({ name, bytes: statSync(join(folder, name)).size }));
  } catch {
    return [];
  }
}
