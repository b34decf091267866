import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'svelte/compiler';
import { expect, test } from 'vitest';

const KIOSK = 'kiosk';
const COMPONENTS = readdirSync(KIOSK, { recursive: true, encoding: 'utf8' }).filter((file) =>
  file.endsWith('.svelte'),
);
const source = (file: string): string => readFileSync(join(KIOSK, file), 'utf8');

/** Every text of a template that a reader would see. */
function literalWords(node: unknown): string[] {
  if (Array.isArray(node)) return node.flatMap(literalWords);
  if (typeof node !== 'object' || node === null) return [];
  const { type, data, attributes: _, ...rest } = node as Record<string, unknown>;
  if (type === 'Text' && typeof data === 'string') return /\p{Letter}{2}/u.test(data) ? [data.trim()] : [];
  return Object.values(rest).flatMap(literalWords);
}

test('the components were found', () => {
  expect(COMPONENTS.length).toBeGreaterThan(60);
});

test.each(COMPONENTS)('%s holds no literal text', (file) => {
  expect(literalWords(parse(source(file), { modern: true }).fragment)).toEqual([]);
});

test.each(COMPONENTS)('%s holds no text field, and no button that could submit', (file) => {
  expect(source(file)).not.toMatch(/<(input|textarea|select|form)\b|contenteditable/);
  for (const [button] of source(file).matchAll(/<button[^>]*/g)) expect(button).toContain('type="button"');
});

test.each(COMPONENTS)('%s stays small', (file) => {
  expect(source(file).split('\n').length).toBeLessThanOrEqual(250);
});

test('half of the components fit on one screen', () => {
  const lines = COMPONENTS.map((file) => source(file).split('\n').length).sort((a, b) => a - b);
  expect(lines[Math.floor(lines.length / 2)]).toBeLessThanOrEqual(60);
});

const tokens = readFileSync(join(KIOSK, 'look/tokens.css'), 'utf8');

function colour(face: string, name: string): string {
  const block = tokens.split(`[data-face='${face}']`)[1] ?? tokens.split(`[data-face="${face}"]`)[1] ?? '';
  return new RegExp(`--${name}: (#[0-9a-f]{6})`).exec(block)?.[1] ?? 'missing';
}

function luminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * (red ?? 0) + 0.7152 * (green ?? 0) + 0.0722 * (blue ?? 0);
}

/** Contrast of two colours after WCAG 2: 1 to 21. */
function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}

test('the measure of contrast gives 21 for black on white', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
});

test.each([
  ['ink', 'ground'],
  ['ink', 'field'],
  ['soft', 'ground'],
  ['on-accent', 'accent'],
  ['on-accent', 'filled'],
  ['on-sign', 'sign'],
  ['mark', 'ground'],
])('%s on %s reads at night and in glare', (text, behind) => {
  expect(contrast(colour('dim', text), colour('dim', behind))).toBeGreaterThanOrEqual(7);
  expect(contrast(colour('glare', text), colour('glare', behind))).toBeGreaterThanOrEqual(12);
});
