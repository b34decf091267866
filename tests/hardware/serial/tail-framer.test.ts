import { describe, expect, it } from 'vitest';
import { TailFramer } from '../../../hardware/serial/tail-framer.ts';
import { bytes } from '../bytes.ts';

/** A frame is LF, letters, one more LF, letters, and the ETX. */
const fresh = () => new TailFramer({ end: 0x03, maxFrame: 8, shape: /\n[a-z]+\n[a-z]+$/ });

describe('a framer that looks back from the last byte', () => {
  it('finds where the frame began though its first byte stands within it too', () => {
    expect(fresh().push(bytes('\nab\ncd\x03'))).toEqual([{ kind: 'line', text: 'ab\ncd' }]);
  });

  it('discards what stands before the frame', () => {
    expect(fresh().push(bytes('x\nab\ncd\x03'))).toEqual([
      { kind: 'discarded', bytes: 1, reason: 'outside-frame' },
      { kind: 'line', text: 'ab\ncd' },
    ]);
  });

  it('discards all up to a last byte that no frame goes with', () => {
    expect(fresh().push(bytes('\nab\x03\nab\ncd\x03'))).toEqual([
      { kind: 'discarded', bytes: 4, reason: 'broken-off' },
      { kind: 'line', text: 'ab\ncd' },
    ]);
  });

  it('holds two frames of noise at most, and reads a frame behind any amount of it', () => {
    const framer = fresh();
    const framed = framer.push(new Uint8Array(1000).fill(0x78));
    expect(framer.pendingBytes).toBeLessThanOrEqual(16);
    expect(framed.length * 8 + framer.pendingBytes).toBe(1000);
    expect(framer.push(bytes('\nab\ncd\x03')).at(-1)).toEqual({ kind: 'line', text: 'ab\ncd' });
  });
});
