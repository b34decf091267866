import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FileRow, type FileRules, previewHerd } from '../../../core/herd-file/preview.ts';
import { makeHerdAnimal } from '../make/herd-animal.ts';

const NOW = Date.UTC(2026, 4, 2, 9);
const RULES: FileRules = { dateOrder: null, species: 'goat', wallMs: NOW, herd: [] };

/** The rows of a file as the server's parser gives them. */
function rowsOf(csv: string): FileRow[] {
  const records = parse(csv, { info: true, relax_column_count: true, bom: true }) as unknown as {
    record: string[];
    info: { lines: number };
  }[];
  let line = 1;
  return records.map(({ record, info }) => {
    const row = { line, cells: record };
    line = info.lines + 1;
    return row;
  });
}

function preview(csv: string, rules: Partial<FileRules> = {}) {
  const found = previewHerd(rowsOf(csv), { ...RULES, ...rules });
  if (!found.ok) throw new Error(found.why);
  return found;
}

/** The one fault of a file of one row with one more column. */
function faultOf(heading: string, cell: string, rules: Partial<FileRules> = {}) {
  const { good, faults } = preview(
    `name,class,${heading}\nAnna,doe,"${cell.replaceAll('"', '""')}"\n`,
    rules,
  );
  return { good: good.length, why: faults.map(({ why }) => why), fault: faults[0] };
}

describe('a good file', () => {
  test('becomes animals', () => {
    const { good, faults, rows, unknownColumns } = preview(
      'Name;Species;Sex;Date of birth;EID;Visual tag;Pen;Bred;In milk since;Weight (kg);Weighed on;Hobby\r\n'.replaceAll(
        ';',
        ',',
      ) +
        'Anna,goat,doe,2022-03-01,840 003123456789,12,north,2026-01-10,2026-03-01,41.5,2026-04-30,chess\r\n' +
        'Knut,sheep,ram,,,,,,,,,\r\n',
    );
    expect(faults).toEqual([]);
    expect(rows).toBe(2);
    expect(unknownColumns).toEqual(['Hobby']);
    expect(good[0]).toMatchObject({
      line: 2,
      weightUnit: 'kg',
      animal: {
        name: 'Anna',
        species: 'goat',
        class: 'female',
        tag: '840003123456789',
        visualTags: ['12'],
        pen: 'north',
        bornAtMs: Date.UTC(2022, 2, 1),
        bredAtMs: Date.UTC(2026, 0, 10),
        inMilk: true,
        lastWeight: { mass: { unit: 'g', value: 41500 }, atMs: Date.UTC(2026, 3, 30) },
        life: { kind: 'present' },
      },
    });
    expect(good[1]?.animal).toMatchObject({ species: 'sheep', class: 'male', tag: null, lastWeight: null });
  });

  test('keeps emoji and any script in names', () => {
    const { good } = preview('name,class\n🐐 Žofie 山羊,doe\n👩‍🌾,doe\n');
    expect(good.map(({ animal }) => animal.name)).toEqual(['🐐 Žofie 山羊', '👩‍🌾']);
  });

  test('counts characters as people do', () => {
    const family = '👩‍👩‍👧';
    expect(preview(`name,class\n${family.repeat(20)},doe\n`).good).toHaveLength(1);
    expect(preview(`name,class\n${'x'.repeat(41)},doe\n`).faults).toMatchObject([{ why: 'too-long' }]);
  });

  test('names the line a row begins on, behind a cell with line ends', () => {
    const { faults } = preview('name,class,pen\nAnna,doe,"a\nb"\nBerta,nobody,\n');
    expect(faults.map(({ line, why }) => [line, why])).toEqual([
      [2, 'control-character'],
      [4, 'not-a-class'],
    ]);
  });
});

describe('a cell is refused by name', () => {
  test.each([
    ['born', '30.4.2022', 'date-order-not-known'],
    ['born', '2022-02-30', 'not-a-date'],
    ['born', '1/1/22', 'not-a-date'],
    ['born', 'May', 'not-a-date'],
    ['born', '2026-05-04', 'in-future'],
    ['born', '1900-01-01', 'too-long-ago'],
    ['tag', '8.40003E+14', 'spoilt-by-spreadsheet'],
    ['tag', '84000312345678', 'not-15-digits'],
    ['tag', '000003123456789', 'no-country'],
    ['species', 'llama', 'not-a-species'],
    ['pen', '=HYPERLINK("http://x")', 'looks-like-formula'],
    ['pen', '@SUM(A1)', 'looks-like-formula'],
    ['pen', '+1', 'looks-like-formula'],
    ['pen', 'a\u202eb', 'control-character'],
    ['pen', 'x'.repeat(31), 'too-long'],
    ['weight', '41.5', 'no-unit'],
    ['weight kg', '91 lb', 'units-clash'],
    ['weight kg', 'heavy', 'not-a-number'],
    ['weight kg', '1,200', 'not-a-number'],
    ['weight kg', '0', 'not-above-zero'],
  ])('%s: %s is %s', (heading, cell, why) => {
    expect(faultOf(heading, cell)).toMatchObject({
      good: 0,
      why: [why],
      fault: { line: 2, heading, value: cell.slice(0, 40) },
    });
  });

  test('a weight beyond its species, and one without its day', () => {
    const { faults } = preview('name,class,weight kg,weighed\nA,doe,400,2026-05-01\nB,doe,40,\n');
    expect(faults.map(({ line, field, why }) => [line, field, why])).toEqual([
      [2, 'weight', 'outside-species'],
      [3, 'weighed', 'weight-without-day'],
    ]);
  });

  test('all faults of a row are told', () => {
    const { faults } = preview('name,class,born,tag\n,nobody,May,1\n');
    expect(faults.map(({ field }) => field)).toEqual(['name', 'class', 'tag', 'born']);
  });

  test('what comes before birth', () => {
    const { faults } = preview('name,class,born,bred,kidded\nA,doe,2024-01-01,2023-12-31,2023-01-01\n');
    expect(faults.map(({ field, why }) => [field, why])).toEqual([
      ['bred', 'before-birth'],
      ['kidded', 'before-birth'],
    ]);
  });

  test('a cell of 10 MB, at once and shortened', () => {
    const huge = 'x'.repeat(10_000_000);
    const started = performance.now();
    for (const heading of ['pen', 'born', 'tag', 'weight kg', 'species', 'name']) {
      const cells = ['Anna', 'doe', huge];
      const headings = heading === 'name' ? ['pen', 'class', 'name'] : ['name', 'class', heading];
      const rows = [
        { line: 1, cells: headings },
        { line: 2, cells },
      ];
      const found = previewHerd(rows, RULES);
      expect(found).toMatchObject({ ok: true, good: [], faults: [{ line: 2, value: 'x'.repeat(40) }] });
    }
    expect(performance.now() - started).toBeLessThan(1000);
  });
});

describe('days and units that must be told', () => {
  test.each([
    ['day-first', Date.UTC(2022, 3, 5)],
    ['month-first', Date.UTC(2022, 4, 4)],
  ] as const)('%s', (dateOrder, atMs) => {
    const { good } = preview('name,class,born\nAnna,doe,5/4/2022\n', { dateOrder });
    expect(good[0]?.animal.bornAtMs).toBe(atMs);
  });

  test('units mixed in one column are converted each by its own, and told', () => {
    const { good, unitsMixed } = preview(
      'name,class,weight,weighed\nA,doe,40 kg,2026-05-01\nB,doe,"88,5 lb",2026-05-01\n',
    );
    expect(unitsMixed).toBe(true);
    expect(good[1]?.animal.lastWeight?.mass.value).toBeCloseTo(88.5 * 453.59237, 6);
  });

  test('a column of units clashing with the heading is refused', () => {
    const { faults } = preview('name,class,weight kg,unit,weighed\nA,doe,40,lb,2026-05-01\n');
    expect(faults).toMatchObject([{ field: 'weight-unit', why: 'units-clash' }]);
  });
});

describe('a number that is there already', () => {
  const herd = [makeHerdAnimal({ name: 'Zora', tag: '840003123456789' })];

  test('keeps out the later row of the file, and names the earlier', () => {
    const { good, faults } = preview(
      'name,class,tag\nA,doe,840003123456780\nB,doe,840003123456780\na,doe,\n',
    );
    expect(good.map(({ line }) => line)).toEqual([2]);
    expect(faults.map(({ line, why, already }) => [line, why, already])).toEqual([
      [3, 'tag-in-file', '2'],
      [4, 'name-in-file', '2'],
    ]);
  });

  test('keeps out a row the herd has', () => {
    const { faults } = preview('name,class,tag\nA,doe,840003123456789\nzora,doe,\n', { herd });
    expect(faults.map(({ why, already }) => [why, already])).toEqual([
      ['tag-in-herd', 'Zora'],
      ['name-in-herd', 'Zora'],
    ]);
  });
});

describe('a file without a heading', () => {
  test.each([
    ['', 'empty'],
    ['age,class\n3,doe\n', 'no-name-column'],
    ['name,Name\nA,B\n', 'column-twice'],
  ])('%j is refused: %s', (csv, why) => {
    expect(previewHerd(rowsOf(csv), RULES)).toMatchObject({ ok: false, why });
  });
});

test('of 100,000 rows with 1 % broken every good one is previewed and each bad one named', () => {
  const broken = (i: number): boolean => i % 100 === 7;
  const rows: FileRow[] = [{ line: 1, cells: ['name', 'class', 'tag', 'born', 'weight kg', 'weighed'] }];
  for (let i = 0; i < 100_000; i += 1) {
    const tag = `840${String(i).padStart(12, '0')}`;
    const born = broken(i) ? '2022-13-01' : '2022-03-01';
    rows.push({ line: i + 2, cells: [`G${i}`, 'doe', tag, born, '40.5', '2026-05-01'] });
  }
  const found = previewHerd(rows, RULES);
  if (!found.ok) throw new Error(found.why);
  expect(found.rows).toBe(100_000);
  expect(found.good).toHaveLength(99_000);
  expect(found.faults).toHaveLength(1000);
  expect(
    found.faults.every(
      ({ line, heading, why }) => broken(line - 2) && heading === 'born' && why === 'not-a-date',
    ),
  ).toBe(true);
}, 30_000);

test('any cells give a preview, and no row is both good and bad', () => {
  const cell = fc.oneof(
    fc.string(),
    fc.constantFrom('goat', 'doe', '2022-01-01', '41 kg', '840003123456789'),
  );
  const file = fc.array(fc.array(cell, { maxLength: 7 }), { maxLength: 20 });
  const heading = ['name', 'species', 'class', 'tag', 'born', 'weight', 'weighed'];
  fc.assert(
    fc.property(file, (cells) => {
      const rows = [heading, ...cells].map((row, i) => ({ line: i + 1, cells: row }));
      const found = previewHerd(rows, RULES);
      if (!found.ok) throw new Error(found.why);
      const bad = new Set(found.faults.map(({ line }) => line));
      expect(found.good.length + bad.size).toBe(found.rows);
      expect(found.good.some(({ line }) => bad.has(line))).toBe(false);
    }),
  );
});
