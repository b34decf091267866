import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeWhole } from '../../../server/config/write-whole.ts';

const folder = (): string => mkdtempSync(join(tmpdir(), 'write-whole-'));

test('a file is created or replaced, and nothing is left beside it', () => {
  const path = folder();
  const file = join(path, 'kept.json');
  writeWhole(file, 'one');
  writeWhole(file, 'two');
  expect(readFileSync(file, 'utf8')).toBe('two');
  expect(readdirSync(path)).toEqual(['kept.json']);
});

test('what was left of a write that a power cut ended is written over', () => {
  const path = folder();
  writeFileSync(join(path, 'kept.json.new'), 'hal');
  writeWhole(join(path, 'kept.json'), 'whole');
  expect(readdirSync(path)).toEqual(['kept.json']);
});

test('a file that cannot take the old one’s place is taken away again', () => {
  const path = folder();
  mkdirSync(join(path, 'kept.json'));
  expect(() => writeWhole(join(path, 'kept.json'), 'text')).toThrow();
  expect(readdirSync(path)).toEqual(['kept.json']);
});
