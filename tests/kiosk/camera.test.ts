import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitted, openCamera, WIDEST } from '../../kiosk/animals/camera.ts';

const camera = { kind: 'videoinput' } as MediaDeviceInfo;
const devices = (found: MediaDeviceInfo[], open: () => Promise<MediaStream>) => ({
  enumerateDevices: async () => found,
  getUserMedia: open,
});

describe('the camera', () => {
  test('is ready where one is plugged in, and stops when it is left', async () => {
    let stopped = 0;
    const stream = { getTracks: () => [{ stop: () => (stopped += 1) }] } as unknown as MediaStream;
    const opened = await openCamera(devices([camera], async () => stream));
    if (opened.at !== 'ready') throw new Error(opened.at);
    opened.stop();
    expect(stopped).toBe(1);
  });

  test.each([
    ['none', devices([], () => Promise.reject(new Error('not asked')))],
    ['forbidden', undefined],
    ['forbidden', devices([camera], () => Promise.reject(new DOMException('no', 'NotAllowedError')))],
    ['broken', devices([camera], () => Promise.reject(new DOMException('busy', 'NotReadableError')))],
  ] as const)('is %s where it cannot be used, and says so', async (at, some) => {
    expect((await openCamera(some)).at).toBe(at);
  });

  test('makes pictures no wider than they are kept, in their own shape', () => {
    expect(fitted(1280, 720)).toEqual({ width: 640, height: 360 });
    expect(fitted(320, 240)).toEqual({ width: 320, height: 240 });
    const side = fc.integer({ min: 1, max: 10_000 });
    fc.assert(
      fc.property(side, side, (width, height) => {
        const size = fitted(width, height);
        expect(Math.max(size.width, size.height)).toBeLessThanOrEqual(WIDEST);
        expect(Math.min(size.width, size.height)).toBeGreaterThanOrEqual(1);
      }),
    );
  });
});
