import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { MEDICINES_FILE, readOwnMedicines } from '../../../server/formulary/own-medicines.ts';

function folder(content: string | null): string {
  const path = mkdtempSync(join(tmpdir(), 'byreside-medicines-'));
  if (content !== null) writeFileSync(join(path, MEDICINES_FILE), content);
  return path;
}

describe('the farm’s own medicines', () => {
  test('are none where there is no file', () => {
    expect(readOwnMedicines(folder(null))).toEqual({ formulary: SHIPPED, trouble: [] });
  });

  test.each([
    ['not JSON', '[{', /cannot be read .*Mend it/],
    ['no list', '{}', /no list.*start the kiosk again/],
    ['a bad entry', '[{"addTo":"no-such"}]', /Entry 1 .*addTo: there is no medicine "no-such".*Correct it/],
  ])(
    'leave the kiosk with what ships where the file holds %s, and say what to do',
    (_what, content, says) => {
      const { formulary, trouble } = readOwnMedicines(folder(content));
      expect(formulary).toEqual(SHIPPED);
      expect(trouble).toHaveLength(1);
      expect(trouble[0]).toMatch(says);
    },
  );

  test('add a rule of their own, which nobody has approved yet', () => {
    const rule = { ...SHIPPED[0]?.regimens[0], id: 'own-levamisole-goat' };
    const content = JSON.stringify([{ addTo: 'levamisole', regimens: [rule] }]);
    const { formulary, trouble } = readOwnMedicines(folder(content));
    expect(trouble).toEqual([]);
    expect(formulary[0]?.regimens.map(({ id }) => id)).toContain('own-levamisole-goat');
  });
});
