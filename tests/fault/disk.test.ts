import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { putToWork, startForTest } from './at-work.ts';
import { reckon } from './books.ts';
import { databaseOf, farmFolder, kill } from './farm.ts';
import { post, send } from './ledger.ts';
import { give } from './round.ts';
import { buildShim, ERRNO, shimOver } from './shim.ts';

const shim = buildShim();

/** A kiosk at work behind the shim, with a kid that has not been dosed. */
async function atWork() {
  const folder = farmFolder();
  const behind = shimOver(shim ?? '', databaseOf(folder));
  const kiosk = await startForTest(folder, behind.env);
  return { folder, behind, ...(await putToWork(kiosk)) };
}

describe.skipIf(shim === null)('a card that', () => {
  test.each([
    ['is full', { write: ERRNO.ENOSPC }, 'full'],
    ['went read-only', { write: ERRNO.EROFS }, 'failing'],
    ['fails', { write: ERRNO.EIO }, 'failing'],
    ['cannot be waited for', { sync: ERRNO.EIO }, 'failing'],
  ])('%s takes no dose and says so; mended, it takes the same press once', async (_, fault, trouble) => {
    const { folder, behind, kiosk, ledger, jugId, kids } = await atWork();
    const [kid] = kids;
    behind.fail(fault);
    const refused = await give(kiosk.base, ledger, jugId, kid);
    expect(refused.state).toBe('refused');
    const told = await kiosk.until((s) => s.keeping.disk !== null, 'trouble with the disk');
    expect(told.keeping.disk).toBe(trouble);
    // A new dose is a stop: it could not be logged.
    expect(await kiosk.send({ ...refused.intent, id: 'another' })).toMatchObject({
      code: 'cannot-pass-stop',
    });
    behind.fail({});
    await kiosk.until((s) => s.keeping.disk === null, 'a disk that is well');
    const once = await post(kiosk.base, refused);
    const again = await post(kiosk.base, refused);
    expect([once, again]).toMatchObject([{ ok: true }, { ok: true, repeated: true }]);
    await kill(kiosk, 'SIGTERM');
    expect(reckon(databaseOf(folder), ledger, true)).toEqual({ lost: [], miscounted: [], halves: [] });
  });
});

/** A small disk of its own, where this process may mount one. */
function mountSmall(): string | null {
  const place = mkdtempSync(join(tmpdir(), 'small-'));
  const { status } = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=28m', 'none', place]);
  if (status !== 0) return null;
  return place;
}

function unmount(place: string): void {
  spawnSync('umount', ['-l', place]);
}

/** A small disk for as long as the test lasts. */
function smallCard(): string {
  const place = mountSmall() ?? '';
  onTestFinished(() => unmount(place));
  return place;
}

function mayMount(): boolean {
  const place = mountSmall();
  if (place !== null) unmount(place);
  return place !== null;
}

describe.skipIf(!mayMount())('a small card', () => {
  test('that fills up is told of before it is full to the last byte, and is well once there is room', async () => {
    const place = smallCard();
    const folder = farmFolder(place);
    const kiosk = await startForTest(folder);
    const { ledger, jugId, kids } = await putToWork(kiosk);
    const [kid] = kids;
    const room = () => statfsSync(place).bavail * statfsSync(place).bsize;
    writeFileSync(join(place, 'photos of the fair'), Buffer.alloc(room() - 8 * 1024 * 1024));
    await kiosk.until((s) => s.keeping.disk === 'full', 'a full disk');
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('refused');
    // What is not a dose is still written while there is any room, and refused whole when there is none.
    const note = { type: 'note-animal', animalId: kid.id, note: 'lame' };
    expect((await send(kiosk.base, ledger, note)).state).toBe('acknowledged');
    writeFileSync(join(place, 'more photos'), Buffer.alloc(room()));
    let last = await send(kiosk.base, ledger, note);
    for (let n = 0; n < 600 && last.state === 'acknowledged'; n += 1)
      last = await send(kiosk.base, ledger, note);
    expect(last.state).toBe('refused');
    rmSync(join(place, 'photos of the fair'));
    rmSync(join(place, 'more photos'));
    await kiosk.until((s) => s.keeping.disk === null, 'a disk that is well');
    expect(await post(kiosk.base, last)).toMatchObject({ ok: true });
    expect((await give(kiosk.base, ledger, jugId, kid)).state).toBe('acknowledged');
    await kill(kiosk, 'SIGTERM');
    expect(reckon(databaseOf(folder), ledger, true)).toEqual({ lost: [], miscounted: [], halves: [] });
  });

  test('that is read-only from the start is said so, takes nothing, and stays as it was', async () => {
    const place = smallCard();
    const folder = farmFolder(place);
    const before = readFileSync(databaseOf(folder));
    spawnSync('mount', ['-o', 'remount,ro', place]);
    const kiosk = await startForTest(folder);
    const state = await kiosk.state();
    expect(state.problem).toMatchObject({
      code: 'store-unreadable',
      remedy: expect.stringContaining('read-only'),
    });
    expect(await kiosk.send({ type: 'safety-read' })).toMatchObject({ code: 'not-configured' });
    expect(readFileSync(databaseOf(folder)).equals(before)).toBe(true);
  });
});
