import { describe, expect, it } from 'vitest';
import { SteadyWidth } from '../../../hardware/scale/steady-width.ts';

function verdicts(lengths: readonly number[]): boolean[] {
  const width = new SteadyWidth();
  return lengths.map((length) => width.accepts(length));
}

describe('the steady width', () => {
  it('is believed from the third line of one length on', () => {
    expect(verdicts([16, 16, 16, 16])).toEqual([false, false, true, true]);
  });

  it('refuses a line that lost a byte, and takes the next whole one at once', () => {
    expect(verdicts([16, 16, 16, 15, 16, 15, 16]).slice(3)).toEqual([false, true, false, true]);
  });

  it('refuses four shortened lines in a row', () => {
    expect(verdicts([16, 16, 16, 15, 15, 15, 15, 16]).slice(3)).toEqual([false, false, false, false, true]);
  });

  it('follows a scale that was switched to another unit with the fifth line', () => {
    expect(verdicts([16, 16, 16, 15, 15, 15, 15, 15, 15]).slice(3)).toEqual([
      false,
      false,
      false,
      false,
      true,
      true,
    ]);
  });

  it('does not add up odd lines that usual ones lie between', () => {
    expect(verdicts([16, 16, 16, 15, 16, 15, 16, 15, 16, 15, 16, 15, 16, 15]).filter(Boolean)).toHaveLength(
      6,
    );
  });

  it('counts anew when the length changes while none is believed', () => {
    expect(verdicts([16, 15, 16, 16, 16])).toEqual([false, false, false, false, true]);
  });
});
