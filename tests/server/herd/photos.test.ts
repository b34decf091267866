import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createPhotos, LARGEST_PHOTO, pictureKind } from '../../../server/herd/photos.ts';
import { jpeg, webp } from '../make/pictures.ts';

const newFolder = () => join(mkdtempSync(join(tmpdir(), 'photos-')), 'photos');

describe('a picture', () => {
  test.each([
    ['a JPEG', jpeg(), 'jpg'],
    ['a WebP', webp(), 'webp'],
    ['a JPEG cut short', jpeg().subarray(0, -1), null],
    ['a WebP cut short', webp().subarray(0, -3), null],
    ['a page', Buffer.from('<!doctype html><script>alert(1)</script>'), null],
    ['nothing', Buffer.alloc(0), null],
  ])('%s is told by its own bytes', (_what, bytes, kind) => {
    expect(pictureKind(bytes)).toBe(kind);
  });

  test('is nothing else, whatever bytes come', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        const isJpeg = bytes[0] === 0xff && bytes[1] === 0xd8;
        const isRiff = bytes[0] === 0x52 && bytes[1] === 0x49;
        expect(isJpeg || isRiff || pictureKind(bytes) === null).toBe(true);
      }),
    );
  });
});

describe('the photos of a kiosk', () => {
  test('are files written whole under names of their own', () => {
    const folder = newFolder();
    const photos = createPhotos(folder, () => '0199');
    const added = photos.add(jpeg(500));
    expect(added).toEqual({ ok: true, name: '0199.jpg' });
    expect(readdirSync(folder)).toEqual(['0199.jpg']);
    expect(photos.read('0199.jpg')).toEqual({ bytes: jpeg(500), type: 'image/jpeg' });
  });

  test.each([
    ['too large', jpeg(LARGEST_PHOTO), 'photo-too-large'],
    ['no picture', Buffer.from('GIF89a'), 'not-a-photo'],
  ])('take nothing that is %s, and leave nothing of it', (_what, bytes, why) => {
    const folder = newFolder();
    expect(createPhotos(folder, () => 'x').add(bytes)).toEqual({ ok: false, why });
    expect(() => readdirSync(folder)).toThrow();
  });

  test('are not to be had by a path, or by a name of another kind', () => {
    const folder = newFolder();
    const photos = createPhotos(folder, () => 'x');
    photos.add(jpeg());
    writeFileSync(join(folder, '..', 'kiosk.json'), '{}');
    for (const name of ['../kiosk.json', '..%2Fkiosk.json', 'x.jpg/../../kiosk.json', 'y.jpg', 'x.svg', ''])
      expect([name, photos.read(name)]).toEqual([name, null]);
  });

  test('tell of a disk that refuses, and leave no draft behind', () => {
    const folder = newFolder();
    writeFileSync(folder, 'a file stands where the folder should');
    expect(() => createPhotos(folder, () => 'x').add(jpeg())).toThrow();
  });
});
