import { describe, expect, it } from 'vitest';
import { RepeatFilter } from '../../../hardware/wand/repeat-filter.ts';

const A = '982000001088420';
const B = '982000000255895';

function newsOf(reads: readonly (readonly [number, string])[]): boolean[] {
  let now = 0;
  const filter = new RepeatFilter(() => now);
  return reads.map(([at, tag]) => {
    now = at;
    return filter.isNews(tag);
  });
}

describe('the repeat filter', () => {
  it('tells the first read, even at uptime zero', () => {
    expect(newsOf([[0, A]])).toEqual([true]);
  });

  it('holds back the same tag for 3 s and tells it again then', () => {
    expect(
      newsOf([
        [0, A],
        [100, A],
        [2999, A],
        [3000, A],
        [3100, A],
      ]),
    ).toEqual([true, false, false, true, false]);
  });

  it('tells another tag at once, and the first one when it comes back', () => {
    expect(
      newsOf([
        [0, A],
        [100, B],
        [200, A],
        [300, A],
      ]),
    ).toEqual([true, true, true, false]);
  });
});
