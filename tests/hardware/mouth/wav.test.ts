import { describe, expect, test } from 'vitest';
import { finishWav, quieter, wavOfSamples } from '../../../hardware/mouth/wav.ts';
import { WavCache } from '../../../hardware/mouth/wav-cache.ts';

const SOUND = wavOfSamples(Float32Array.from([0, 0.5, -0.5, 2]), 1000);

describe('a WAV', () => {
  test('holds its samples, clipped, and lasts as long as they do', () => {
    const view = new DataView(SOUND.bytes.buffer);
    expect(SOUND.durationMs).toBe(4);
    expect([44, 46, 48, 50].map((at) => view.getInt16(at, true))).toEqual([0, 16384, -16383, 32767]);
    expect(view.getUint32(40, true)).toBe(8);
    expect(view.getUint32(4, true)).toBe(SOUND.bytes.length - 8);
  });

  test('from a pipe gets its lengths put right', () => {
    const piped = Uint8Array.from(SOUND.bytes);
    new DataView(piped.buffer).setUint32(40, 0x7fff_f000, true);
    new DataView(piped.buffer).setUint32(4, 0x7fff_f024, true);
    expect(finishWav(piped)).toEqual(SOUND);
  });

  test('cut short loses half a sample, not its sense; what is none is refused', () => {
    expect(finishWav(SOUND.bytes.slice(0, 49))?.durationMs).toBe(2);
    expect(finishWav(SOUND.bytes.slice(0, 44))).toBeNull();
    expect(
      finishWav(new TextEncoder().encode('no sound at all, but long enough to be read as one')),
    ).toBeNull();
  });

  test('is made quieter sample by sample', () => {
    expect(new DataView(quieter(SOUND, 0.5).bytes.buffer).getInt16(46, true)).toBe(8192);
    expect(new DataView(SOUND.bytes.buffer).getInt16(46, true)).toBe(16384);
  });
});

describe('the cache', () => {
  test('keeps no more than its bytes, and drops what was not used for longest', () => {
    const cache = new WavCache(2 * SOUND.bytes.length);
    cache.set('a', SOUND);
    cache.set('b', SOUND);
    cache.get('a');
    cache.set('c', SOUND);
    expect(['a', 'b', 'c'].map((key) => cache.get(key) !== undefined)).toEqual([true, false, true]);
    expect(cache.bytes).toBe(2 * SOUND.bytes.length);
    cache.set('c', SOUND);
    expect(cache.bytes).toBe(2 * SOUND.bytes.length);
  });

  test('keeps nothing larger than itself', () => {
    const cache = new WavCache(10);
    cache.set('a', SOUND);
    expect(cache.get('a')).toBeUndefined();
    expect(cache.bytes).toBe(0);
  });
});
