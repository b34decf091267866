import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LineSplitter } from '../../../hardware/serial/line-splitter.ts';
import { bytes, cut, cuts, rubbish } from '../bytes.ts';
import { accountedFor, pushAll } from './framing-laws.ts';

const fresh = (maxLength = 20) => new LineSplitter({ maxLength, synchronised: false });
const synchronised = (maxLength = 20) => new LineSplitter({ maxLength, synchronised: true });

describe('the line splitter', () => {
  it('discards what stands before the first end of line, unless told that it starts in step', () => {
    expect(fresh().push(bytes('12.3kg\r\nwhole\r\n'))).toEqual([
      { kind: 'discarded', bytes: 8, reason: 'unsynchronised' },
      { kind: 'line', text: 'whole' },
    ]);
    expect(synchronised().push(bytes('first\r\n'))).toEqual([{ kind: 'line', text: 'first' }]);
  });

  it('takes a line of the greatest length and discards one byte more', () => {
    expect(synchronised(5).push(bytes('12345\r\n'))).toEqual([{ kind: 'line', text: '12345' }]);
    expect(synchronised(5).push(bytes('123456\r\n'))).toEqual([
      { kind: 'discarded', bytes: 8, reason: 'too-long' },
    ]);
  });

  it.each(['a\x00b', 'a\x7f', 'caf\xe9', 'a\rb', 'a\nb', 'a\r'])(
    'discards a line with the byte of %j',
    (text) => {
      const framed = synchronised().push(bytes(`${text}\r\nnext\r\n`));
      expect(framed).toEqual([
        { kind: 'discarded', bytes: text.length + 2, reason: 'not-ascii' },
        { kind: 'line', text: 'next' },
      ]);
    },
  );

  it('gives an empty line for two ends of line in a row', () => {
    expect(synchronised().push(bytes('\r\n\r\n'))).toEqual([
      { kind: 'line', text: '' },
      { kind: 'line', text: '' },
    ]);
  });

  it('frames the same however the bytes were cut', () => {
    fc.assert(
      fc.property(rubbish(300), cuts, (whole, places) => {
        expect(pushAll(fresh(), cut(whole, places))).toEqual(fresh().push(whole));
      }),
      { numRuns: 1000 },
    );
  });

  it('accounts for every byte', () => {
    fc.assert(
      fc.property(rubbish(300), cuts, (whole, places) => {
        const splitter = fresh();
        const framed = pushAll(splitter, cut(whole, places));
        expect(accountedFor(framed) + splitter.pendingBytes).toBe(whole.length);
      }),
      { numRuns: 1000 },
    );
  });

  it('reads the second whole line after any noise', () => {
    fc.assert(
      fc.property(rubbish(200), (whole) => {
        const splitter = fresh();
        splitter.push(whole);
        const framed = splitter.push(bytes('ST,GS,+0012.34kg\r\nST,GS,+0012.35kg\r\n'));
        expect(framed.at(-1)).toEqual({ kind: 'line', text: 'ST,GS,+0012.35kg' });
      }),
      { numRuns: 1000 },
    );
  });
});
