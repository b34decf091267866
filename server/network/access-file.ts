import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { DeviceKind, DeviceRight } from '../../shared/network.ts';
import { writeWhole } from '../config/write-whole.ts';

/** A paired device as it is kept: its token only as a hash. Times in milliseconds since 1970. */
export const KeptDevice = z.strictObject({
  id: z.string(),
  kind: DeviceKind,
  number: z.int().positive(),
  right: DeviceRight,
  /** SHA-256 of the token, hexadecimal. */
  tokenHash: z.string().regex(/^[0-9a-f]{64}$/),
  pairedAtMs: z.int(),
  lastSeenAtMs: z.int().nullable(),
});
/** A paired device as it is kept. */
export type KeptDevice = z.infer<typeof KeptDevice>;

/** The PIN of a person as it is kept: scrypt of it, base64. */
export const KeptPin = z.strictObject({ salt: z.string(), hash: z.string() });
/** The PIN of a person as it is kept. */
export type KeptPin = z.infer<typeof KeptPin>;

/** Who is let in besides the board. */
export const Access = z.strictObject({
  on: z.boolean(),
  /** The number of the next device: none is used twice. */
  nextNumber: z.int().positive(),
  devices: z.array(KeptDevice),
  pins: z.record(z.string(), KeptPin),
});
/** Who is let in besides the board. */
export type Access = z.infer<typeof Access>;

const NOBODY: Access = { on: false, nextNumber: 1, devices: [], pins: {} };

/** Who is let in, on disk. */
export interface AccessFile {
  /** What stands in the file; `null` where it cannot be read. A file that is not there lets nobody in. */
  read(): Access | null;
  /** Keeps it whole. Throws when the disk refuses. */
  write(access: Access): void;
}

/**
 * The file `access.json` in a folder that only the kiosk's own user may read.
 *
 * It is no part of the records: copies of them hold no secrets, and restoring an old one lets nobody in again who was
 * turned out since.
 */
export function accessFile(folder: string): AccessFile {
  const file = join(folder, 'access.json');
  return {
    read() {
      if (!existsSync(file)) return NOBODY;
      try {
        return Access.parse(JSON.parse(readFileSync(file, 'utf8')));
      } catch {
        return null;
      }
    },
    write(access) {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      writeWhole(file, `${JSON.stringify(access, null, 2)}\n`, 0o600);
    },
  };
}
