import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type KioskProcess, startKiosk } from '../process/kiosk-process.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';

const hasBrowser = existsSync(CHROMIUM);
const folder = mkdtempSync(join(tmpdir(), 'phone-'));
const PIN = '2580';
let server: KioskProcess;
let kiosk: KioskPage;

beforeAll(async () => {
  if (!hasBrowser) return;
  server = await startKiosk({ BYRESIDE_DATA: folder, BYRESIDE_NETWORK_PORT: '0' });
  kiosk = await openKiosk(server.base);
}, 60_000);

afterAll(async () => {
  await kiosk?.close();
  server?.child.kill('SIGTERM');
  rmSync(folder, { recursive: true, force: true });
});

/** A phone on the farm: a browser that knows nothing of the kiosk's own. Its user compared the fingerprint and went on. */
async function openPhone(address: string) {
  const context = await kiosk.page
    .context()
    .browser()
    ?.newContext({
      viewport: { width: 360, height: 640 },
      hasTouch: true,
      isMobile: true,
      ignoreHTTPSErrors: true,
    });
  if (context === undefined) throw new Error('the browser is gone');
  const page = await context.newPage();
  await page.goto(address);
  return { page, cookies: () => context.cookies() };
}

async function tap(page: Page, testId: string): Promise<void> {
  const part = page.getByTestId(testId).first();
  await part.waitFor();
  await page.waitForTimeout(450);
  await part.tap();
}

/** Taps the PIN, and each digit again that came too soon to count. */
async function tapPin(page: Page, tapOne: (key: string) => Promise<void>): Promise<void> {
  const entered = async () =>
    ((await page.getByTestId('keypad-entry').textContent()) ?? '').replace('–', '').length;
  for (const [at, digit] of [...PIN].entries()) while ((await entered()) <= at) await tapOne(`key-${digit}`);
  await tapOne('key-done');
}

test.runIf(hasBrowser)(
  'a phone is paired, follows, is refused, works by PIN in that name, and is turned out at once',
  { timeout: 120_000 },
  async () => {
    await kiosk.tap('safety-read');
    await kiosk.page.goto(`${server.base}/#shed/phones`);
    await kiosk.page.reload();
    await kiosk.page.getByTestId('network-on').waitFor();
    await kiosk.page.waitForTimeout(400);
    await kiosk.press('network-on', 1200);
    await kiosk.tap('pins-open');
    await kiosk.tap('pin-of', '[data-person="Bram"]');
    await tapPin(kiosk.page, kiosk.tap);
    await tapPin(kiosk.page, kiosk.tap);
    await server.until(({ network }) => network.withPin.includes('Bram'), 'the PIN');
    await kiosk.tap('back');
    await kiosk.tap('back');
    await kiosk.page.goto(`${server.base}/#shed/phones`);
    await kiosk.page.reload();
    await kiosk.tap('pair-open');
    await kiosk.tap('right-act');
    const code = (await kiosk.text('pairing-code')).replace(' ', '');
    const shown = await kiosk.text('pairing-address');
    // By the board's own number, which it may not have: the door is the network's all the same.
    const address = `https://127.0.0.1:${new URL(shown).port}/`;

    const phone = await openPhone(`${address}#pair/${code}`);
    await tap(phone.page, 'pair-now');
    await phone.page.getByTestId('follows').waitFor();
    await kiosk.page.getByTestId('pairing-ended').waitFor();
    const [token] = await phone.cookies();
    expect(token).toMatchObject({ httpOnly: true, secure: true, sameSite: 'Strict' });

    const refused = await phone.page.evaluate(async () => {
      const body = JSON.stringify({
        type: 'enrol',
        id: 'p1',
        name: 'Sorrel',
        species: 'goat',
        class: 'female',
        tag: null,
        inMilk: false,
      });
      const answer = await fetch('/api/intents', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body,
      });
      return { status: answer.status, ...((await answer.json()) as object) };
    });
    expect(refused).toMatchObject({ status: 403, code: 'needs-pin' });

    await tap(phone.page, 'follows');
    await tap(phone.page, 'person-tile');
    await tapPin(phone.page, (key) => tap(phone.page, key));
    await phone.page.getByTestId('works-as').waitFor();
    const [animal] = (await server.state()).animals;
    const noted = await phone.page.evaluate(async (animalId) => {
      const body = JSON.stringify({ type: 'note-animal', id: 'p2', animalId, note: 'lame' });
      const answer = await fetch('/api/intents', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body,
      });
      return answer.json();
    }, animal?.id);
    expect(noted).toMatchObject({ ok: true });
    const kept = await (await fetch(`${server.base}/api/animals/${animal?.id}`)).text();
    expect(kept).toMatch(/"by":"Bram"/);
    expect((await server.state()).shed.person).not.toBe('Bram');

    await kiosk.tap('pairing-done');
    await kiosk.tap('device-tile');
    await kiosk.page.getByTestId('device-remove').waitFor();
    await kiosk.page.waitForTimeout(400);
    await kiosk.press('device-remove', 1200);
    await phone.page.getByTestId('pair-here').waitFor({ timeout: 10_000 });
    expect(kiosk.complaints).toEqual([]);

    // Whatever the log says, it says none of these.
    expect(server.log()).toMatch(/ready at/);
    for (const secret of [PIN, code, token?.value ?? 'none']) expect(server.log()).not.toContain(secret);
  },
);
