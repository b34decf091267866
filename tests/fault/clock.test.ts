import { describe, expect, test } from 'vitest';
import { CAUTION_CODES } from '../../core/dosing/cautions.ts';
import { DAY_MS, HOUR_MS } from '../../core/moment.ts';
import { putToWork, startForTest } from './at-work.ts';
import { databaseOf, farmFolder, kill } from './farm.ts';
import { begin, give } from './round.ts';
import { buildShim, shimOver } from './shim.ts';

const shim = buildShim();
const YEAR_MS = 365 * DAY_MS;

/** A kiosk whose clock is moved by so much. */
async function withClock(byMs = 0) {
  const folder = farmFolder();
  const behind = shimOver(shim ?? '', databaseOf(folder));
  behind.moveClock(byMs);
  return { folder, behind, kiosk: await startForTest(folder, behind.env) };
}

describe.skipIf(shim === null)('a clock that', () => {
  test('stands forty years back at the start is not believed: a dose asks, its dates are provisional until the time is said', async () => {
    const { kiosk } = await withClock(-40 * YEAR_MS);
    expect((await kiosk.state()).clockTrusted).toBe(false);
    const { ledger, jugId, kids } = await putToWork(kiosk);
    const [kid] = kids;
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
    const now = new Date();
    expect(await kiosk.send({ type: 'set-clock', at: now.toISOString().slice(0, 16) })).toMatchObject({
      ok: true,
    });
    const set = await kiosk.state();
    expect(set.clockTrusted).toBe(true);
    expect(set.dayBook[0]).toMatchObject({ provisional: false });
    expect(Math.abs(Date.parse(set.dayBook[0]?.givenAt ?? '') - now.getTime())).toBeLessThan(10 * 60_000);
  });

  test('jumps back in the middle of a round is not believed from then on, and no animal is dosed twice by it', async () => {
    const { kiosk, behind } = await withClock();
    const { ledger, jugId, kids } = await putToWork(kiosk);
    const [kid] = kids;
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('acknowledged');
    behind.moveClock(-2 * HOUR_MS);
    await kiosk.until((s) => !s.clockTrusted, 'a clock that is not believed');
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('refused');
  });

  test('jumps a day on does not make a dose of a minute ago old enough', async () => {
    const { kiosk, behind } = await withClock();
    const { ledger, jugId, kids } = await putToWork(kiosk);
    const [kid] = kids;
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('acknowledged');
    behind.moveClock(DAY_MS + HOUR_MS);
    await kiosk.until((s) => Date.parse(s.now) > Date.now() + DAY_MS, 'tomorrow');
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('refused');
  });

  test('jumps a day on while the kiosk starts anew does not make a dose of a minute ago old enough', async () => {
    const { folder, kiosk, behind } = await withClock();
    const { ledger, kids } = await putToWork(kiosk);
    const [kid] = kids;
    const jugId = await begin(kiosk.base, ledger);
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('acknowledged');
    await kill(kiosk);
    behind.moveClock(DAY_MS + HOUR_MS);
    const anew = await startForTest(folder, behind.env);
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
