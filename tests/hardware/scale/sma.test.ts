import { describe, expect, it } from 'vitest';
import { SMA } from '../../../hardware/scale/sma.ts';
import { SMA_BROKEN, SMA_FRAMES, SMA_OTHER, SMA_TARE } from '../../oracles/serial-frames.ts';
import { bytes } from '../bytes.ts';
import { expectFault, expectReading, onlyText } from './expect-decoded.ts';

describe('the polled protocol', () => {
  it.each(SMA_FRAMES)('reads $wire ($source)', ({ wire, reading }) => {
    expectReading(SMA.decode(onlyText(SMA, wire), 'bench', 1234), 'bench', 1234, reading);
  });

  it.each(SMA_OTHER)('names $wire a $fault, not a reading ($source)', ({ wire, fault }) => {
    expectFault(SMA, wire, fault);
  });

  it.each(SMA_BROKEN)('refuses the broken $wire as $fault', ({ wire, fault }) => {
    expectFault(SMA, wire, fault);
  });

  it('never takes a tare told on request for the load', () => {
    const decoded = SMA.decode(onlyText(SMA, SMA_TARE.wire), 'platform', 0);
    expect(decoded).toEqual({ kind: 'tare', mass: { unit: 'g', value: SMA_TARE.grams } });
  });

  it('reports a fault status as such even where the field still shows a number', () => {
    const decoded = SMA.decode('E1G       5.025kg ', 'bench', 0);
    expect(decoded).toMatchObject({ kind: 'reading', reading: { fault: 'zero-error', mass: { value: 0 } } });
  });

  it('asks with LF W CR and gives up a question before the link counts as silent', () => {
    expect(SMA.poll?.bytes).toEqual(bytes('\nW\r'));
    expect(2 * (SMA.poll?.replyWithinMs ?? Number.NaN)).toBeLessThan(SMA.silentAfterMs);
  });
});
