import decoder from 'jsqr';
import { describe, expect, test } from 'vitest';
import { jugCode } from '../../../server/print/jug-label.ts';
import { printingIn } from '../../../server/print/printing.ts';
import { qrCode, qrModules } from '../../../server/print/qr-code.ts';
import { makeJug } from '../../core/make/jug.ts';

/** The package is the function itself; its types say it is a property of it. */
const decode = decoder as unknown as typeof decoder.default;

/** Reads a code the way a telephone does, from an image of it: 4 pixels a module, 4 modules of quiet zone. */
function read(modules: readonly (readonly boolean[])[]): string | undefined {
  const [scale, quiet] = [4, 4];
  const size = (modules.length + 2 * quiet) * scale;
  const image = new Uint8ClampedArray(4 * size * size).fill(255);
  for (let y = 0; y < size; y += 1) {
    for (let x = 0; x < size; x += 1) {
      const row = modules[Math.floor(y / scale) - quiet];
      if (row?.[Math.floor(x / scale) - quiet]) image.set([0, 0, 0, 255], 4 * (y * size + x));
    }
  }
  return decode(image, size, size)?.data;
}

describe('the QR code of a jug', () => {
  test('is read back as the text of the label', () => {
    const text = jugCode(makeJug(), 'levamisole hydrochloride', printingIn('en', 'UTC'));
    expect(text.split('\n')).toHaveLength(5);
    expect(text).toContain('49.45 mg/mL');
    expect(read(qrModules(text))).toBe(text);
  });

  test('is drawn with every dark module once, inside its quiet zone', () => {
    const modules = qrModules('Jug 7');
    const { html } = qrCode('Jug 7');
    const drawn = [...html.matchAll(/M(\d+) (\d+)h1v1h-1z/g)].map(([, x, y]) => [Number(x), Number(y)]);
    expect(drawn).toHaveLength(modules.flat().filter(Boolean).length);
    for (const at of drawn.flat()) {
      expect(at).toBeGreaterThanOrEqual(4);
      expect(at).toBeLessThan(modules.length + 4);
    }
  });
});
