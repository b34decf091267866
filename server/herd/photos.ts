import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeWhole } from '../config/write-whole.ts';

/** The largest photo taken, in bytes: one of 640 by 480 is a tenth of it. */
export const LARGEST_PHOTO = 300 * 1024;

/** The kinds of picture taken, by the ending of their names. */
export const PHOTO_TYPES = { jpg: 'image/jpeg', webp: 'image/webp' } as const;

const NAME = /^[0-9A-Za-z-]{1,40}\.(jpg|webp)$/;

/** Why bytes are no photo. */
export type PhotoRefusal = 'photo-too-large' | 'not-a-photo';

/** Photos of animals, each a file of its own that is written once and never changed. */
export interface Photos {
  /** Keeps a photo under a name of its own; throws when the disk refuses, and then nothing is left of it. */
  add(
    bytes: Uint8Array,
  ): { readonly ok: true; readonly name: string } | { readonly ok: false; readonly why: PhotoRefusal };
  /** The bytes of a photo with their type; `null` where there is none of that name. */
  read(name: string): { readonly bytes: Buffer; readonly type: string } | null;
}

/**
 * What kind of picture bytes are, by their own headers and ends: a JPEG from its start to its end marker, or a WebP as
 * long as it says. `null` for anything else, so that nothing but a picture is ever served.
 */
export function pictureKind(bytes: Uint8Array): keyof typeof PHOTO_TYPES | null {
  const at = (index: number): number => bytes[index] ?? -1;
  if (at(0) === 0xff && at(1) === 0xd8 && at(2) === 0xff) {
    return at(bytes.length - 2) === 0xff && at(bytes.length - 1) === 0xd9 ? 'jpg' : null;
  }
  const text = (from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));
  if (text(0, 4) !== 'RIFF' || text(8, 12) !== 'WEBP') return null;
  const says = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(4, true);
  // A block of odd length is followed by one byte of padding.
  return says + 8 === bytes.length || says + 9 === bytes.length ? 'webp' : null;
}

/** Photos in a folder, made when the first is kept; with `null` there is no place for any. */
export function createPhotos(folder: string | null, newId: () => string): Photos {
  return {
    add(bytes) {
      if (bytes.length > LARGEST_PHOTO) return { ok: false, why: 'photo-too-large' };
      const kind = pictureKind(bytes);
      if (kind === null) return { ok: false, why: 'not-a-photo' };
      if (folder === null) throw new Error('there is no folder for photos');
      mkdirSync(folder, { recursive: true });
      const name = `${newId()}.${kind}`;
      writeWhole(join(folder, name), bytes);
      return { ok: true, name };
    },
    read(name) {
      const kind = NAME.exec(name)?.[1] as keyof typeof PHOTO_TYPES | undefined;
      if (folder === null || kind === undefined) return null;
      try {
        return { bytes: readFileSync(join(folder, name)), type: PHOTO_TYPES[kind] };
      } catch {
        return null;
      }
    },
  };
}
