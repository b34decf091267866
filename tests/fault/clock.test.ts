import { afterEach, describe, expect, test } from 'vitest';
import { CAUTION_CODES } from '../../core/dosing/cautions.ts';
import { DAY_MS, HOUR_MS } from '../../core/moment.ts';
import type { KioskProcess } from '../process/kiosk-process.ts';
import { databaseOf, farmFolder, kill, startOn } from './farm.ts';
import type { Ledger } from './ledger.ts';
import { begin, give, learnKids } from './round.ts';
import { buildShim, shimOver } from './shim.ts';

const cleanUps: (() => unknown)[] = [];
afterEach(async () => {
  for (const cleanUp of cleanUps.splice(0).reverse()) await cleanUp();
});

const shim = buildShim();
const YEAR_MS = 365 * DAY_MS;

async function atWork(byMs = 0) {
  const folder = farmFolder();
  const behind = shimOver(shim ?? '', databaseOf(folder));
  behind.moveClock(byMs);
  const kiosk: KioskProcess = await startOn(folder, behind.env);
  cleanUps.push(() => kill(kiosk));
  const ledger: Ledger = new Map();
  return { folder, behind, kiosk, ledger };
}

describe.skipIf(shim === null)('a clock that', () => {
  test('stands forty years back at the start is not believed: a dose asks, and its dates are provisional', async () => {
    const { kiosk, ledger } = await atWork(-40 * YEAR_MS);
    expect((await kiosk.state()).clockTrusted).toBe(false);
    const jugId = await begin(kiosk.base, ledger);
    const [kid] = await learnKids(kiosk.base, ledger, jugId);
    if (kid === undefined) throw new Error('there is no kid');
    const without = {
      type: 'give-group',
      jugId,
      animalIds: [kid.id],
      animalId: kid.id,
      volumeMl: kid.volumeMl,
    };
    expect(await kiosk.send({ ...without, accepted: [] })).toMatchObject({ code: 'ask-open' });
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('acknowledged');
    expect((await kiosk.state()).dayBook[0]).toMatchObject({ provisional: true });
  });

  test('jumps back in the middle of a round is not believed from then on, and no animal is dosed twice by it', async () => {
    const { kiosk, ledger, behind } = await atWork();
    const jugId = await begin(kiosk.base, ledger);
    const [kid] = await learnKids(kiosk.base, ledger, jugId);
    if (kid === undefined) throw new Error('there is no kid');
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('acknowledged');
    behind.moveClock(-2 * HOUR_MS);
    await kiosk.until((s) => !s.clockTrusted, 'a clock that is not believed');
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('refused');
  });

  test('jumps a day on does not make a dose of a minute ago old enough', async () => {
    const { kiosk, ledger, behind } = await atWork();
    const jugId = await begin(kiosk.base, ledger);
    const [kid] = await learnKids(kiosk.base, ledger, jugId);
    if (kid === undefined) throw new Error('there is no kid');
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('acknowledged');
    behind.moveClock(DAY_MS + HOUR_MS);
    await kiosk.until((s) => Date.parse(s.now) > Date.now() + DAY_MS, 'tomorrow');
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('refused');
  });

  test('jumps a day on while the kiosk starts anew does not make a dose of a minute ago old enough', async () => {
    const { folder, kiosk, ledger, behind } = await atWork();
    const [kid] = await learnKids(kiosk.base, ledger, await begin(kiosk.base, ledger));
    if (kid === undefined) throw new Error('there is no kid');
    const jugId = await begin(kiosk.base, ledger);
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('acknowledged');
    await kill(kiosk);
    behind.moveClock(DAY_MS + HOUR_MS);
    const anew = await startOn(folder, behind.env);
    cleanUps.push(() => kill(anew));
    // The bottle in hand is proved again; what was given before is left as it stands.
    for (const wish of [{ type: 'take-jug' }, { type: 'prove-jug', deliberate: true }])
      expect(await anew.send({ ...wish, jugId })).toMatchObject({ ok: true });
    const dose = {
      animalIds: [kid.id],
      animalId: kid.id,
      volumeMl: kid.volumeMl,
      accepted: [...CAUTION_CODES],
    };
    expect(await anew.send({ type: 'give-group', jugId, ...dose })).toMatchObject({
      code: 'cannot-pass-stop',
    });
  });
});
