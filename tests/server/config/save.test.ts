import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { changeConfig } from '../../../server/config/save.ts';

function folder(): string {
  return mkdtempSync(join(tmpdir(), 'save-'));
}

test('a file that was not there is created whole, with nothing left beside it', () => {
  const data = join(folder(), 'new');
  changeConfig(data, (config) => ({ ...config, people: ['Wren'] }));
  expect(readdirSync(data)).toEqual(['kiosk.json']);
  expect(JSON.parse(readFileSync(join(data, 'kiosk.json'), 'utf8'))).toEqual({ people: ['Wren'] });
});

test('what a change does not touch stays as it was written', () => {
  const data = folder();
  writeFileSync(join(data, 'kiosk.json'), '{"face":"glare","people":["Wren"]}');
  changeConfig(data, (config) => ({ ...config, people: ['Finch'] }));
  expect(JSON.parse(readFileSync(join(data, 'kiosk.json'), 'utf8'))).toEqual({
    face: 'glare',
    people: ['Finch'],
  });
});

test('a file that is no JSON is refused and left as it was', () => {
  const data = folder();
  writeFileSync(join(data, 'kiosk.json'), '{"face":');
  expect(() => changeConfig(data, (config) => config)).toThrow();
  expect(readFileSync(join(data, 'kiosk.json'), 'utf8')).toBe('{"face":');
});
