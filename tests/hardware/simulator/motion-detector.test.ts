import { describe, expect, it } from 'vitest';
import { MotionDetector } from '../../../hardware/simulator/motion-detector.ts';

describe('the motion flag', () => {
  it('stays off while the load varies by no more than a division', () => {
    const detector = new MotionDetector(50);
    expect([0, 50, 10, 0].map((grams, index) => detector.moves(100 * index, grams))).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  it('goes on with a larger change and off a second after it', () => {
    const detector = new MotionDetector(50);
    detector.moves(0, 0);
    expect(detector.moves(100, 51)).toBe(true);
    expect(detector.moves(900, 51)).toBe(true);
    expect(detector.moves(1000, 51)).toBe(false);
  });
});
