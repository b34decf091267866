import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CAUTION_CODES } from '../../core/dosing/cautions.ts';
import { farmFolder, kill, startOn } from '../fault/farm.ts';
import type { Ledger } from '../fault/ledger.ts';
import { begin, type Kid, learnKids } from '../fault/round.ts';
import { hasPostgres, startPostgres, type TestPostgres } from '../server/make/postgres.ts';
import { type CutLine, layLine } from './cut-line.ts';
import { type HubProcess, inviteInto, runHub, startHub } from './hub-process.ts';
import type { KioskProcess } from './kiosk-process.ts';

/** How long a dose given at one kiosk may take to be refused at another. */
const SOON_MS = 5000;
const PORT = '4187';

/** Two sheds of a farm with a kiosk each, and a hub that the second reaches by a line that can be cut. */
describe.runIf(hasPostgres)('two kiosks share a herd through a hub', () => {
  const [north, south] = [farmFolder(), mkdtempSync(join(tmpdir(), 'south-'))];
  const ledger: Ledger = new Map();
  let postgres: TestPostgres;
  let env: Record<string, string>;
  let hub: HubProcess;
  let line: CutLine;
  let one: KioskProcess;
  let other: KioskProcess;
  let jugs: { one: string; other: string };
  let kids: readonly Kid[];

  beforeAll(async () => {
    postgres = await startPostgres();
    const database = await postgres.database();
    env = {
      BYRESIDE_HUB_DATABASE: database,
      BYRESIDE_HUB_PORT: PORT,
      BYRESIDE_HUB_DATA: join(north, 'hub-data'),
    };
    hub = await startHub(env);
    line = await layLine(hub.address);
    writeFileSync(join(south, 'kiosk.json'), '{"people": ["Finch"]}');
    inviteInto(north, 'North shed', env);
    const invitation = JSON.parse(inviteInto(south, 'South shed', env));
    writeFileSync(join(south, 'hub.json'), JSON.stringify({ ...invitation, hub: line.address }));
    one = await startOn(north);
    other = await startOn(south);
    const herd = (await one.state()).animals.length;
    await other.until(({ animals }) => animals.length === herd, 'the herd');
    await other.send({
      type: 'approve',
      regimenId: 'fenbendazole-goat',
      direction: 'label',
      meatHours: null,
      milkHours: null,
    });
    await other.send({ type: 'set-syringes', syringeIds: ['syringe-3-by-0.1'] });
    const first = await begin(one.base, ledger);
    kids = await learnKids(one.base, ledger, first);
    jugs = { one: first, other: await begin(other.base, new Map()) };
  }, 120_000);

  afterAll(async () => {
    for (const kiosk of [one, other]) if (kiosk !== undefined) await kill(kiosk);
    hub?.child.kill('SIGKILL');
    await line?.stop();
    await postgres?.stop();
    for (const folder of [north, south]) rmSync(folder, { recursive: true, force: true });
  });

  const doses = async (kiosk: KioskProcess, { id }: Kid) =>
    (await kiosk.treatments()).filter(({ animal, corrections }) => animal === id && corrections.length === 0);
  const at = (kiosk: KioskProcess) => (kiosk === one ? jugs.one : jugs.other);
  const dose = (kiosk: KioskProcess, { id, volumeMl }: Kid) =>
    kiosk.send({
      type: 'give-group',
      id: `dose-${++sent}`,
      jugId: at(kiosk),
      animalIds: [id],
      animalId: id,
      volumeMl,
      accepted: [...CAUTION_CODES],
    });

  /** Waits until a kiosk knows of a dose; answers how long that took. Then it refuses another. */
  async function refusedAfter(kiosk: KioskProcess, kid: Kid, many = 1): Promise<number> {
    const began = performance.now();
    while ((await doses(kiosk, kid)).length < many) {
      if (performance.now() - began > 20_000) throw new Error('the dose never came');
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    const took = performance.now() - began;
    expect(await dose(kiosk, kid)).toMatchObject({ code: 'cannot-pass-stop' });
    expect(await doses(kiosk, kid)).toHaveLength(many);
    return took;
  }

  const kid = (place: number) => kids[place] as Kid;

  test('a goat dosed at one is refused at the other within five seconds', async () => {
    expect(await dose(one, kid(0))).toMatchObject({ ok: true });
    const took = await refusedAfter(other, kid(0));
    console.log(`dosed at one, refused at the other after ${Math.round(took)} ms`);
    expect(took).toBeLessThan(SOON_MS);
  });

  test('and within five seconds of the mending of a line that was cut without a word', async () => {
    line.cut();
    expect(await dose(one, kid(1))).toMatchObject({ ok: true });
    await new Promise((resolve) => setTimeout(resolve, 3000));
    expect(await doses(other, kid(1))).toHaveLength(0);
    line.mend();
    const took = await refusedAfter(other, kid(1));
    console.log(`line mended, refused at the other after ${Math.round(took)} ms`);
    expect(took).toBeLessThan(SOON_MS);
  });

  test('dosed at both while the line was cut: both doses are kept at both, and a third is refused', async () => {
    const [wrong] = await doses(other, kid(1));
    await other.send({ type: 'correct', treatmentId: wrong?.id, what: { kind: 'not-given' } });
    await expect.poll(() => doses(one, kid(1)), { timeout: 20_000 }).toHaveLength(0);
    line.cut();
    expect(await dose(one, kid(1))).toMatchObject({ ok: true });
    expect(await dose(other, kid(1))).toMatchObject({ ok: true });
    line.mend();
    await refusedAfter(one, kid(1), 2);
    await refusedAfter(other, kid(1), 2);
  });

  test('hub and kiosk killed as a plug is pulled: all that was acknowledged reaches the other, once', async () => {
    const [{ id }] = [kid(0)];
    await note(one, id, 'lame');
    hub.child.kill('SIGKILL');
    await note(one, id, 'scouring');
    await kill(one);
    hub = await startHub(env);
    await note(other, id, 'off-feed');
    await kill(other);
    [one, other] = [await startOn(north), await startOn(south)];
    for (const kiosk of [one, other])
      await expect
        .poll(async () => (await notesOf(kiosk, id)).sort(), { timeout: 20_000 })
        .toEqual(['lame', 'off-feed', 'scouring']);
  });

  test('an office that the farm lets in reads at the hub what its kiosks told', async () => {
    const file = join(north, 'practice.json');
    expect(runHub(['office', 'Practice', file], env)).toMatchObject({ status: 0 });
    const { office, key } = JSON.parse(readFileSync(file, 'utf8'));
    const board = `${hub.address}/office/farms/hill-farm/board`;
    const headers = { cookie: `byreside-office=${key}` };
    expect((await fetch(board, { headers })).status).toBe(404);
    expect(runHub(['let-in', 'hill-farm', office], env)).toMatchObject({ status: 0 });
    const shown = await fetch(board, { headers });
    expect(shown.status).toBe(200);
    const { name } = (await one.state()).animals.find(({ id }) => id === kid(0).id) ?? { name: '' };
    expect(await shown.text()).toContain(`<th>${name}</th>`);
  });

  test('a kiosk that was shut out at the hub works on, and gets nothing any more', async () => {
    expect(runHub(['revoke', 'hill-farm', 'South shed'], env)).toMatchObject({ status: 0 });
    await note(one, kid(1).id, 'lame');
    await new Promise((resolve) => setTimeout(resolve, 3000));
    expect(await notesOf(other, kid(1).id)).toEqual([]);
    expect(await note(other, kid(1).id, 'off-feed')).toMatchObject({ ok: true });
  });

  test('an invitation is a secret that is written once, to be read by its owner only', () => {
    const again = runHub(['invite', 'hill-farm', 'North shed', join(north, 'byreside-hub.json')], env);
    expect(again.status).toBe(1);
    expect(JSON.parse(readFileSync(join(north, 'hub.json'), 'utf8')).key).toHaveLength(43);
  });
});

let sent = 0;

/** Notes something under an id that no start of a kiosk has used. */
const note = (kiosk: KioskProcess, animalId: string, what: string) =>
  kiosk.send({ type: 'note-animal', id: `note-${++sent}`, animalId, note: what });

async function notesOf(kiosk: KioskProcess, animalId: string): Promise<string[]> {
  const page = await (await fetch(`${kiosk.base}/api/animals/${animalId}`)).json();
  return page.notes.map(({ note }: { note: string }) => note);
}
