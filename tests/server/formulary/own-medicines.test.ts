import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { MEDICINES_FILE, medicinesFile, NOTHING_OWN } from '../../../server/formulary/own-medicines.ts';
import { makeRule } from '../../core/make/regimen.ts';

function folder(content: string | null): string {
  const path = mkdtempSync(join(tmpdir(), 'byreside-medicines-'));
  if (content !== null) writeFileSync(join(path, MEDICINES_FILE), content);
  return path;
}

const text = (path: string): string => readFileSync(join(path, MEDICINES_FILE), 'utf8');
const addition = (id: string) => ({
  addTo: 'levamisole',
  presentations: [],
  regimens: [{ ...makeRule(), id }],
});
const RETIRED = { retire: 'own-levamisole-goat', by: 'Wren', on: '2027-04-12' };

describe('the farm’s own medicines', () => {
  test('are none where there is no file', () => {
    expect(medicinesFile(folder(null)).read()).toEqual(NOTHING_OWN);
  });

  test.each([
    ['not JSON', '[{', /cannot be read .*Mend it/],
    ['no list', '{}', /no list.*start the kiosk again/],
    ['a bad entry', '[{"addTo":"no-such"}]', /Entry 1 .*addTo: there is no medicine "no-such".*Correct it/],
  ])(
    'leave the kiosk with what ships where the file holds %s, and say what to do',
    (_what, content, says) => {
      const { formulary, trouble } = medicinesFile(folder(content)).read();
      expect(formulary).toEqual(SHIPPED);
      expect(trouble).toHaveLength(1);
      expect(trouble[0]).toMatch(says);
    },
  );

  test('add a rule of their own, which nobody has approved yet', () => {
    const { formulary, own, trouble } = medicinesFile(
      folder(JSON.stringify([addition('own-levamisole-goat')])),
    ).read();
    expect(trouble).toEqual([]);
    expect(own).toEqual(new Set(['own-levamisole-goat']));
    const [levamisole] = formulary;
    expect(levamisole?.regimens.some(({ id }) => id === 'own-levamisole-goat')).toBe(true);
  });
});

describe('an entry added at the screen', () => {
  test('stands in a file a person can read, with nothing left beside it, and counts at once', () => {
    const path = join(folder(null), 'not-there-yet');
    const after = medicinesFile(path).append([addition('own-levamisole-goat')]);
    expect(after?.own).toEqual(new Set(['own-levamisole-goat']));
    expect(readdirSync(path)).toEqual([MEDICINES_FILE]);
    expect(text(path)).toMatch(/^\[\n {2}\{\n {4}"addTo": "levamisole",\n/);
    expect(text(path).endsWith(']\n')).toBe(true);
    expect(medicinesFile(path).read()).toEqual(after);
  });

  test('leaves what a person wrote as it is, the bad entries too', () => {
    const written = [{ addTo: 'no-such', presentations: [] }, addition('own-levamisole-goat')];
    const path = folder(JSON.stringify(written));
    const after = medicinesFile(path).append([RETIRED]);
    expect(JSON.parse(text(path))).toEqual([...written, RETIRED]);
    expect(after?.retired).toEqual(new Set(['own-levamisole-goat']));
    expect(after?.trouble).toHaveLength(1);
  });

  test('takes in what a person wrote since', () => {
    const path = folder(null);
    const file = medicinesFile(path);
    file.read();
    writeFileSync(join(path, MEDICINES_FILE), JSON.stringify([addition('by-hand')]));
    expect(file.append([addition('at-the-screen')])?.own).toEqual(new Set(['by-hand', 'at-the-screen']));
  });

  test('touches no file that cannot be read', () => {
    const path = folder('[{');
    expect(medicinesFile(path).append([RETIRED])).toBeNull();
    expect(text(path)).toBe('[{');
  });

  test('that makes no sense beside what is there is not written', () => {
    const path = folder(JSON.stringify([addition('own-levamisole-goat')]));
    const before = text(path);
    expect(() => medicinesFile(path).append([addition('own-levamisole-goat')])).toThrow('is taken');
    expect(text(path)).toBe(before);
  });

  test('that the disk refuses leaves the file as it was, and no half of a new one', () => {
    const path = folder('[]');
    // A folder in the place of the fresh file: no user, root either, can write it.
    mkdirSync(join(path, `${MEDICINES_FILE}.new`));
    chmodSync(join(path, `${MEDICINES_FILE}.new`), 0o500);
    expect(() => medicinesFile(path).append([addition('own')])).toThrow();
    expect(text(path)).toBe('[]');
  });
});
