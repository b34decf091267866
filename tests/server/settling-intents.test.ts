import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { pixelsPerMm } from '../../core/panel/panel.ts';
import { withSettings } from '../../server/config/with-settings.ts';
import { panelView } from '../../server/view/state-view.ts';
import { type TestBarn, testBarn } from './make/test-barn.ts';

let folder: string;
let kiosk: TestBarn;
const file = () => JSON.parse(readFileSync(join(folder, 'kiosk.json'), 'utf8'));
const config = () => kiosk.barn.context.config;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'settling-'));
  writeFileSync(join(folder, 'kiosk.json'), '{"face": "glare", "people": ["Wren", "Finch"]}');
  kiosk = testBarn(':memory:', () => {}, {
    settle: (settings) => {
      const { context } = kiosk.barn;
      context.config = withSettings(folder, context.config, settings);
    },
  });
});

afterEach(() => {
  kiosk.store.close();
  rmSync(folder, { recursive: true, force: true });
});

test('the size of a panel is kept as its diagonal, and told as pixels in a millimetre', () => {
  const pxPerMm = pixelsPerMm(1024, 600, 10.1);
  expect(kiosk.send({ type: 'set-panel', widthPx: 1024, heightPx: 600, pxPerMm })).toMatchObject({
    ok: true,
  });
  expect(file()).toMatchObject({ face: 'glare', panel: { diagonalInches: expect.closeTo(10.1, 9) } });
  expect(panelView(config().panel)).toEqual({
    widthPx: 1024,
    heightPx: 600,
    pxPerMm: expect.closeTo(pxPerMm, 9),
  });
  expect(kiosk.send({ type: 'set-panel', widthPx: 1024, heightPx: 600, pxPerMm: 0.6 })).toMatchObject({
    code: 'no-such-panel',
  });
});

test('a zone is kept if there is one of that name', () => {
  expect(kiosk.send({ type: 'set-time-zone', timeZone: 'Europe/Dublin' })).toMatchObject({ ok: true });
  expect([config().timeZone, file().timeZone]).toEqual(['Europe/Dublin', 'Europe/Dublin']);
  expect(kiosk.send({ type: 'set-time-zone', timeZone: 'Europe/Nowhere' })).toMatchObject({
    code: 'no-such-zone',
  });
});

test('a person is added and works at once, and one who is taken out hands over to another', () => {
  expect(kiosk.send({ type: 'add-person', name: 'Ada' })).toMatchObject({ ok: true });
  expect(config().people).toEqual(['Wren', 'Finch', 'Ada']);
  expect(kiosk.barn.context.memory.settings.person).toBe('Ada');
  expect(kiosk.send({ type: 'add-person', name: 'ada' })).toMatchObject({ code: 'person-known' });
  expect(kiosk.send({ type: 'remove-person', name: 'Ada' })).toMatchObject({ ok: true });
  expect(kiosk.barn.context.memory.settings.person).toBe('Wren');
  expect(kiosk.send({ type: 'remove-person', name: 'Ada' })).toMatchObject({ code: 'no-such-person' });
  expect(kiosk.send({ type: 'remove-person', name: 'Wren' })).toMatchObject({ ok: true });
  expect(kiosk.send({ type: 'remove-person', name: 'Finch' })).toMatchObject({ code: 'last-person' });
  expect(file().people).toEqual(['Finch']);
});

test('the first name takes the place of the one nobody chose, and a thirteenth is refused', () => {
  config().people.splice(0, 2, 'Keeper');
  for (let at = 1; at <= 12; at += 1)
    expect(kiosk.send({ type: 'add-person', name: `N${at}` }).ok).toBe(true);
  expect(config().people).toHaveLength(12);
  expect(config().people).not.toContain('Keeper');
  expect(kiosk.send({ type: 'add-person', name: 'Ada' })).toMatchObject({ code: 'too-many-people' });
});

test('a configuration that could not be read again is not written, and the demo keeps its own', () => {
  expect(() => withSettings(folder, config(), { people: [] })).toThrow();
  expect(file()).toEqual({ face: 'glare', people: ['Wren', 'Finch'] });
  const demo = testBarn();
  expect(demo.send({ type: 'add-person', name: 'Ada' })).toMatchObject({ code: 'only-for-real' });
  demo.store.close();
});
