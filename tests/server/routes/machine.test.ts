import { expect, test } from 'vitest';
import { MachinePage } from '../../../shared/machine.ts';
import { testApp } from '../make/test-app.ts';

const headers = { host: 'localhost:4180' };

test('the board is told as the schema says, with what is not known as such', async () => {
  const { app } = await testApp();
  const page = MachinePage.parse((await app.inject({ url: '/api/machine', headers })).json());
  expect(page).toMatchObject({ supply: 'good', celsius: 48.3, limitCelsius: 80, version: '1.2.3' });
  expect(page.disk.records).toBeNull();
  expect(page.memory.kiosk).toBeGreaterThan(1e6);
});

test('figures are told in the text format, with a name, a help and a value each', async () => {
  const { app } = await testApp();
  const answer = await app.inject({ url: '/api/metrics', headers });
  expect(answer.headers['content-type']).toContain('text/plain; version=0.0.4');
  const lines = answer.body.split('\n');
  expect(lines).toContain('# TYPE byreside_working gauge');
  expect(lines).toContain('byreside_working 1');
  expect(lines).toContain('byreside_board_celsius 48.3');
  expect(lines).toContain('byreside_supply_low 0');
  expect(answer.body).toMatch(/^process_resident_memory_bytes \d+$/m);
});

test('a figure that is not known has no value', async () => {
  const { app } = await testApp();
  const { body } = await app.inject({ url: '/api/metrics', headers });
  expect(body).toContain('# TYPE byreside_records_bytes gauge');
  expect(body).not.toMatch(/^byreside_records_bytes /m);
});

test('figures tell of no animal and no person', async () => {
  const { app, test: barn } = await testApp();
  const { body } = await app.inject({ url: '/api/metrics', headers });
  for (const { name } of barn.barn.context.memory.animals) expect(body).not.toContain(name);
  expect(body).not.toContain('Wren');
});
