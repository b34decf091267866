import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { createHerdFile, UNASKED } from '../../../server/herd/herd-file.ts';
import { readTable, readTableInParts } from '../../../server/table-file/read-file.ts';
import { ImportView } from '../../../shared/herd-file.ts';
import { herdCsv } from '../make/herd-csv.ts';
import { testApp } from '../make/test-app.ts';
import { type TestBarn, testBarn } from '../make/test-barn.ts';

const NO_HERD = { sayings: UNASKED, herd: [] };

async function posted(csv: string | Buffer, made = testApp()) {
  const { app, test: barn } = await made;
  const response = await app.inject({
    method: 'POST',
    url: '/api/import?name=herd.csv',
    headers: { host: 'localhost:4180', 'content-type': 'text/csv' },
    payload: csv,
  });
  const look = async (query = ''): Promise<ImportView> => {
    const answer = await app.inject({ url: `/api/import${query}`, headers: { host: 'localhost:4180' } });
    return ImportView.parse(answer.json());
  };
  return { app, barn, look, status: response.statusCode, view: ImportView.parse(response.json()) };
}

function ready(view: ImportView) {
  if (view.stage.step !== 'ready') throw new Error(JSON.stringify(view.stage));
  return view.stage;
}

const count = (barn: TestBarn): number => barn.store.animals.all().length;

describe('a herd file of 10,000 rows with 1 % broken', () => {
  test('names each bad cell, and is written whole when it is accepted', async () => {
    const { csv, broken } = herdCsv(10_000);
    const { barn, look, view } = await posted(csv);
    const stage = ready(view);
    expect(stage).toMatchObject({ rows: 10_000, good: 10_000 - broken, faultCount: broken, asks: null });
    expect(stage.faults.slice(0, 3)).toEqual([
      { line: 101, column: 'Born', why: 'not-a-date', value: '2025-02-30', already: null },
      { line: 201, column: 'Class', why: 'not-a-class', value: 'unicorn', already: null },
      { line: 301, column: 'Tag', why: 'spoilt-by-spreadsheet', value: '8.40003E+14', already: null },
    ]);
    const rest = ready(await look('?from=20&count=1000'));
    expect(rest.faults).toHaveLength(broken - 20);
    expect(count(barn)).toBe(2);
    expect(barn.send({ type: 'import-accept', preview: stage.id }).ok).toBe(true);
    expect(count(barn)).toBe(2 + stage.good);
    expect(await look()).toMatchObject({ stage: { step: 'written', animals: stage.good } });
    const added = barn.barn.context.memory.animals.find(({ name }) => name === 'N7');
    expect(barn.store.weighings.newest(added?.id ?? '', 2)).toMatchObject([
      { mass: { value: 47_500 }, method: 'imported' },
    ]);
  }, 60_000);

  test('is read in slices, and others get a turn between them', async () => {
    const barn = testBarn();
    const { csv } = herdCsv(10_000);
    let [turns, reading] = [0, true];
    const count = () => {
      turns += 1;
      if (reading) setImmediate(count);
    };
    setImmediate(count);
    await barn.barn.context.herdFile.take('a.csv', Buffer.from(csv), NO_HERD);
    reading = false;
    expect(turns).toBeGreaterThan(10);
  }, 60_000);
});

describe('accepting', () => {
  const GOOD = 'name,species,class\nAnna,goat,doe\nBert,goat,buck\n';

  test('twice adds nothing', async () => {
    const { barn, view } = await posted(GOOD);
    const { id } = ready(view);
    expect(barn.send({ type: 'import-accept', preview: id }).ok).toBe(true);
    expect(barn.send({ type: 'import-accept', preview: id })).toMatchObject({ code: 'preview-outdated' });
    expect(count(barn)).toBe(4);
  });

  test('writes nothing where an animal of the file was enrolled in between', async () => {
    const { barn, view } = await posted(GOOD);
    const newOne = { species: 'goat', class: 'male', tag: null, inMilk: false } as const;
    barn.send({ type: 'enrol', name: 'BERT', ...newOne });
    expect(barn.send({ type: 'import-accept', preview: ready(view).id })).toMatchObject({
      code: 'preview-outdated',
    });
    expect(count(barn)).toBe(3);
  });

  test('writes nothing where the disk refuses in the middle, and can be tried again', async () => {
    const { barn, look, view } = await posted(GOOD);
    const { id } = ready(view);
    const { add } = barn.store.animals;
    let calls = 0;
    const disk = vi.spyOn(barn.store.animals, 'add').mockImplementation((animal, by) => {
      calls += 1;
      if (calls === 2) throw new Error('no room on the disk');
      add(animal, by);
    });
    expect(barn.send({ type: 'import-accept', preview: id })).toMatchObject({ code: 'not-written' });
    disk.mockRestore();
    expect(count(barn)).toBe(2);
    expect(barn.barn.context.memory.animals).toHaveLength(2);
    expect(ready(await look()).id).toBe(id);
    expect(barn.send({ type: 'import-accept', preview: id }).ok).toBe(true);
    expect(count(barn)).toBe(4);
  });

  test('another preview, or none, is refused', async () => {
    const { barn, view } = await posted(GOOD);
    expect(barn.send({ type: 'import-accept', preview: 'other' })).toMatchObject({ code: 'no-such-preview' });
    barn.send({ type: 'import-drop' });
    expect(barn.send({ type: 'import-accept', preview: ready(view).id })).toMatchObject({
      code: 'no-such-preview',
    });
    const bad = await posted('name,species,class\nAnna,unicorn,doe\n');
    expect(bad.barn.send({ type: 'import-accept', preview: ready(bad.view).id })).toMatchObject({
      code: 'nothing-to-take-in',
    });
  });
});

describe('what the file does not say', () => {
  test('is asked, and the rows are judged by the answer', async () => {
    const { barn, look, view } = await posted('name,class,born\nAnna,doe,5/4/2026\n');
    expect(ready(view).asks).toBe('date-order');
    barn.send({ type: 'import-judge', dateOrder: 'day-first', species: null });
    await vi.waitFor(async () => expect(ready(await look()).asks).toBe('species'));
    barn.send({ type: 'import-judge', dateOrder: 'day-first', species: 'goat' });
    await vi.waitFor(async () => expect(ready(await look())).toMatchObject({ asks: null, good: 1 }));
    barn.send({ type: 'import-accept', preview: ready(await look()).id });
    expect(barn.barn.context.memory.animals.find(({ name }) => name === 'Anna')?.bornAtMs).toBe(
      Date.UTC(2026, 3, 5),
    );
  });
});

test.each([
  ['not UTF-8', Buffer.from([0x6e, 0xff, 0xfe]), 'not-utf8'],
  ['quotes left open', 'name,class\n"Anna,doe\n', 'broken-quotes'],
  ['nothing in it', '', 'empty'],
  ['no column of names', 'class\ndoe\n', 'no-name-column'],
])('a file with %s is refused with why', async (_what, csv, why) => {
  const { view } = await posted(csv);
  expect(view.stage).toMatchObject({ step: 'refused', why });
});

test('a file taken apart in parts is the same as in one', async () => {
  const csv = `name,note\r\n${'"Žofie 🐐\r\nof two lines",x\r\n'.repeat(9000)}Anna,"y"\r\n`;
  const bytes = Buffer.from(`\uFEFF${csv}`);
  expect(await readTableInParts(bytes)).toEqual(readTable(bytes));
  const broken = Buffer.from(`${csv}"open`);
  expect(await readTableInParts(broken)).toEqual(readTable(broken));
});

describe('the import folder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'import-'));
  writeFileSync(join(folder, 'herd.csv'), 'name,species,class\nAnna,goat,doe\n');
  writeFileSync(join(folder, 'photo.jpg'), 'x');
  const make = (dir: string | null) =>
    createHerdFile({
      folder: dir,
      now: () => 1_800_000_000_000,
      newId: () => 'p',
      changed: () => {},
      log: () => {},
    });

  test('lists herd files only, and reads one of them', async () => {
    const herdFile = make(folder);
    expect(herdFile.files()).toEqual([{ name: 'herd.csv', bytes: 33 }]);
    expect(herdFile.read('herd.csv', NO_HERD)).toBeNull();
    await vi.waitFor(() => expect(herdFile.stage()).toMatchObject({ step: 'ready', preview: { rows: 1 } }));
  });

  test.each(['../herd.csv', 'photo.jpg', 'none.csv', '/etc/passwd'])('does not read %s', (name) => {
    expect(make(folder).read(name, NO_HERD)).toBe('no-such-file');
  });

  test('that cannot be made is as good as empty', () => {
    expect(make(join(folder, 'photo.jpg', 'import')).files()).toEqual([]);
    expect(make(null).files()).toEqual([]);
  });

  test('a file begun anew puts the one before it aside', async () => {
    const herdFile = make(folder);
    const first = herdFile.take('a.csv', Buffer.from(herdCsv(2000).csv), NO_HERD);
    const second = herdFile.take('b.csv', Buffer.from('name,species,class\nAnna,goat,doe\n'), NO_HERD);
    await Promise.all([first, second]);
    expect(herdFile.stage()).toMatchObject({ step: 'ready', file: 'b.csv' });
  });
});

test('a barn with a preview on screen goes on weighing', async () => {
  const barn = testBarn();
  await barn.barn.context.herdFile.take('a.csv', Buffer.from(herdCsv(100).csv), NO_HERD);
  barn.weigh(15_000, 1000);
  expect(barn.barn.context.memory.deck.live?.value).toBe(15_000);
});
