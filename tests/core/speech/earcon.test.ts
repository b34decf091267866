import { describe, expect, test } from 'vitest';
import { EARCON_RATE, EARCONS, type Earcon, earconMs, renderEarcon } from '../../../core/speech/earcon.ts';
import { pourTone } from '../../../core/speech/pour-tone.ts';

/** The power of a signal in steps of 10 Hz up to half the sampling rate, by the sum of its definition. */
function spectrum(samples: Float32Array): { hz: number; power: number }[] {
  const bins = [];
  for (let hz = 10; hz < EARCON_RATE / 2; hz += 10) {
    const step = (2 * Math.PI * hz) / EARCON_RATE;
    let [re, im] = [0, 0];
    samples.forEach((sample, i) => {
      re += sample * Math.cos(step * i);
      im += sample * Math.sin(step * i);
    });
    bins.push({ hz, power: re * re + im * im });
  }
  return bins;
}

function strongest(earcon: Earcon): number {
  return spectrum(renderEarcon(earcon)).reduce((best, bin) => (bin.power > best.power ? bin : best)).hz;
}

/** When it sounds, in pieces of 10 ms. */
function rhythm(earcon: Earcon): string {
  const samples = renderEarcon(earcon);
  const piece = EARCON_RATE / 100;
  return Array.from({ length: Math.floor(samples.length / piece) }, (_, i) =>
    samples.slice(i * piece, (i + 1) * piece).some((sample) => Math.abs(sample) > 0.1) ? '#' : '.',
  ).join('');
}

describe('earcons', () => {
  test.each(EARCONS)('%s has its sound between 500 and 2,000 Hz', (earcon) => {
    const bins = spectrum(renderEarcon(earcon));
    const sum = (some: typeof bins) => some.reduce((total, { power }) => total + power, 0);
    const inside = sum(bins.filter(({ hz }) => hz >= 500 && hz <= 2000));
    expect(inside / sum(bins)).toBeGreaterThan(0.98);
  });

  test.each(EARCONS)('%s begins and ends without a click, is not clipped, and is short', (earcon) => {
    const samples = renderEarcon(earcon);
    const steps = samples.slice(1).map((sample, i) => Math.abs(sample - (samples[i] ?? 0)));
    expect(Math.abs(samples[0] ?? 1) + Math.abs(samples.at(-1) ?? 1)).toBeLessThan(0.01);
    expect(Math.max(...samples.map(Math.abs))).toBeLessThanOrEqual(0.5);
    // No step is larger than the steepest slope of its highest note.
    expect(Math.max(...steps)).toBeLessThan((0.5 * 2 * Math.PI * 2000) / EARCON_RATE);
    expect(earconMs(earcon)).toBeLessThan(1000);
  });

  test('no two have the same rhythm, nor the same strongest pitch within a semitone', () => {
    expect(new Set(EARCONS.map(rhythm)).size).toBe(EARCONS.length);
    const pitches = EARCONS.map(strongest).sort((a, b) => a - b);
    for (const [i, hz] of pitches.slice(1).entries()) {
      expect(hz / (pitches[i] ?? 0)).toBeGreaterThan(2 ** (1 / 12));
    }
  });
});

describe('the tone of a pour', () => {
  test('is silent far off, rises as the target nears, and ends at the band', () => {
    expect(pourTone(null, 900, 5)).toBeNull();
    expect(pourTone(700, 900, 5)).toBeNull();
    const hz = [720, 780, 840, 894].map((now) => pourTone(now, 900, 5) ?? 0);
    expect([...hz].sort((a, b) => a - b)).toEqual(hz);
    expect(hz[0]).toBeGreaterThanOrEqual(500);
    expect(hz.at(-1)).toBeLessThanOrEqual(2000);
    expect(pourTone(895, 900, 5)).toBeNull();
  });
});
