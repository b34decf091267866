import { describe, expect, test } from 'vitest';
import { jugLife } from '../../../core/mixing/jug.ts';
import { printBarn } from '../make/print-barn.ts';
import { testApp } from '../make/test-app.ts';

async function page(url: string, test_ = printBarn()) {
  const { app } = await testApp(null, test_);
  const response = await app.inject({ url, headers: { host: 'localhost:4180' } });
  await app.close();
  return response;
}

/** The style sheet that a page names. */
async function styleOf(url: string, test_ = printBarn()): Promise<string> {
  const sheet = /<link rel="stylesheet" href="([^"]+)">/.exec((await page(url, test_)).body)?.[1] ?? '';
  const { statusCode, headers, body } = await page(sheet, test_);
  expect(statusCode).toBe(200);
  expect(headers['content-type']).toContain('text/css');
  return body;
}

describe('the page of a jug', () => {
  test('has what, how strong, which jug, until when, hazards and the safety words', async () => {
    const { statusCode, body, headers } = await page('/print/jug/jug-7');
    expect(statusCode).toBe(200);
    expect(headers['content-type']).toContain('text/html');
    for (const each of [
      'levamisole hydrochloride',
      '49.45 mg/mL',
      'Jug 7',
      'Use by ',
      'Wear gloves',
      'Swirl before each draw',
      'The kiosk is not a vet.',
      'class="qr"',
    ])
      expect(body).toContain(each);
  });

  test('has a table for each approved rule and none for the others', async () => {
    const { body } = await page('/print/jug/jug-7');
    expect(body).toContain('Goats: 12 mg/kg');
    expect(body).not.toContain('Sheep:');
    expect(body).toContain('never above 18 mg/kg');
    expect(body).toContain('Milk: no time known, ask the vet');
    expect(body.match(/<tr>/g)?.length).toBeGreaterThan(40);
  });

  test('without an approved rule has no table and says how to get one', async () => {
    const test_ = printBarn();
    test_.barn.context.memory = { ...test_.barn.context.memory, approvals: [] };
    const { body } = await page('/print/jug/jug-7', test_);
    expect(body).not.toContain('<table>');
    expect(body).toContain('Approve one at Shed');
  });

  test('is as wide as the paper asked for', async () => {
    expect(await styleOf('/print/jug/jug-7')).toContain('size: 105mm 148mm');
    expect(await styleOf('/print/jug/jug-7?paper=roll')).toContain('size: 62mm');
    expect(await styleOf('/print/jug/jug-7?paper=other')).toContain('size: 105mm 148mm');
  });

  test('is as wide as the paper that is kept where it asks for none', async () => {
    const test_ = printBarn();
    test_.send({ type: 'set-paper', paper: 'roll' });
    expect(await styleOf('/print/jug/jug-7', test_)).toContain('size: 62mm');
    expect(await styleOf('/print/jug/jug-7?paper=a6', test_)).toContain('size: 105mm 148mm');
  });

  test.each(['jug', 'group'])('keeps no paper by being read: /print/%s', async (kind) => {
    const test_ = printBarn();
    const writes = test_.store.handled.writes();
    await page(`/print/${kind}/jug-7?paper=roll`, test_);
    expect(test_.barn.context.memory.settings.paper).toBe('a6');
    expect(test_.store.handled.writes()).toBe(writes);
  });

  test('of a jug poured away says so and has no table to dose by', async () => {
    const test_ = printBarn({ discardedAtMs: 1 });
    expect(test_.barn.context.memory.jugs.map((jug) => jugLife(jug, 0))).toEqual(['discarded']);
    const { body } = await page('/print/jug/jug-7', test_);
    expect(body).toContain('POURED AWAY');
    expect(body).not.toContain('<table>');
  });

  test('shows a name that is markup as the name it is', async () => {
    const { body } = await page('/print/jug/jug-7', printBarn({ by: '<script>alert(1)</script>' }));
    expect(body).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(body.match(/<script/g)).toHaveLength(1);
  });

  test('may load nothing from elsewhere, and its script only prints', async () => {
    const { headers } = await page('/print/jug/jug-7');
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    const { body } = await page('/print/print.js');
    expect(body).toContain('print()');
  });
});

test('a jug nobody knows is not found, and the page leads back', async () => {
  const { statusCode, body } = await page('/print/jug/no-such');
  expect(statusCode).toBe(404);
  expect(body).toContain('No such jug');
  expect(body).toContain('href="/#jug"');
});
