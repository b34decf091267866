import { describe, expect, test } from 'vitest';
import { printBarn } from '../make/print-barn.ts';
import { testApp } from '../make/test-app.ts';
import { bringToOffer, standingOffer, testBarn } from '../make/test-barn.ts';

async function ask(url: string, test_ = testBarn()) {
  const { app } = await testApp(null, test_);
  const response = await app.inject({ url, headers: { host: 'localhost:4180' } });
  await app.close();
  return response;
}

/** A barn whose goat was dosed. */
function dosed() {
  const test_ = testBarn();
  bringToOffer(test_);
  test_.send({ type: 'give', offerId: standingOffer(test_).id, outcome: 'whole' });
  return test_;
}

describe('the office of a kiosk', () => {
  test('begins with who may be milked and sold, those that are kept back first', async () => {
    expect((await ask('/office')).headers['location']).toBe('/office/board');
    const before = await ask('/office/board');
    expect(before.statusCode).toBe(200);
    expect(before.body).toContain('Nothing kept back: 2');
    const { body } = await ask('/office/board', dosed());
    expect(body).toContain('Kept back: 1');
    expect(body).toMatch(/<th>Teasel<\/th>.*<td class="no">/s);
    expect(body).toContain('<li>Campion</li>');
    expect(body).toContain('Levamisole, counted from');
  });

  test('has the register of some days, and the files of the same days', async () => {
    const { body } = await ask('/office/register?from=2027-04-01&to=', dosed());
    expect(body).toContain('Teasel');
    expect(body).toContain('1 treatment.');
    expect(body).toContain('href="/api/exports/register?from=2027-04-01"');
    expect((await ask('/office/register?from=2027-04-13', dosed())).body).toContain(
      'No treatment in these days.',
    );
    const wrong = await ask('/office/register?from=13th');
    expect(wrong.statusCode).toBe(400);
    expect(wrong.body).toContain('from is no day');
  });

  test('tells what worked, once a test is finished', async () => {
    expect((await ask('/office/tests')).body).toContain('No finished test yet.');
  });

  test('speaks the language of the screen', async () => {
    const test_ = dosed();
    test_.send({ type: 'set-language', language: 'es' });
    const { body } = await ask('/office/board', test_);
    expect(body).toContain('lang="es"');
    expect(body).toContain('Retenidos: 1');
  });

  test('runs no script, and no style but its own', async () => {
    const { headers, body } = await ask('/office/board', printBarn());
    expect(headers['content-security-policy']).toMatch(/^default-src 'none'; style-src 'self'/);
    expect(body).not.toMatch(/<script|<style|style="/);
    expect((await ask('/office/office.css')).headers['content-type']).toContain('text/css');
  });

  test('is not for whoever is not paired', async () => {
    const { app } = await testApp();
    for (const url of [
      '/office',
      '/office/board',
      '/office/register',
      '/office/tests',
      '/office/office.css',
    ]) {
      const headers = { host: '192.168.1.20:4180' };
      const { statusCode } = await app.inject({ url, headers, remoteAddress: '192.168.1.77' });
      expect([url, [401, 421].includes(statusCode)]).toEqual([url, true]);
    }
    await app.close();
  });
});
