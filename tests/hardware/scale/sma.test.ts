import { describe, expect, it } from 'vitest';
import { SMA, SMA_HIGH } from '../../../hardware/scale/sma.ts';
import { SMA_TARE } from '../../oracles/serial-frames.ts';
import { bytes } from '../bytes.ts';
import { onlyText } from './expect-decoded.ts';

describe('the polled protocol', () => {
  it('never takes a tare told on request for the load', () => {
    const decoded = SMA.decode(onlyText(SMA, SMA_TARE.wire), 'platform', 0);
    expect(decoded).toEqual({ kind: 'tare', mass: { unit: 'g', value: SMA_TARE.grams } });
  });

  it('reports a fault status as such even where the field still shows a number', () => {
    const decoded = SMA.decode('E1G       5.025kg ', 'bench', 0);
    expect(decoded).toMatchObject({ kind: 'reading', reading: { fault: 'zero-error', mass: { value: 0 } } });
  });

  it('asks with LF H CR for the fine weight, and reads it as gross or net all the same', () => {
    expect(SMA_HIGH.poll?.bytes).toEqual(bytes('\nH\r'));
    const fine = SMA_HIGH.decode(onlyText(SMA_HIGH, '\n 1n      5.0025lb \r'), 'platform', 0);
    expect(fine).toMatchObject({ kind: 'reading', reading: { net: true } });
  });

  it('asks with LF W CR and gives up a question before the link counts as silent', () => {
    expect(SMA.poll?.bytes).toEqual(bytes('\nW\r'));
    expect(2 * (SMA.poll?.replyWithinMs ?? Number.NaN)).toBeLessThan(SMA.silentAfterMs);
  });
});
