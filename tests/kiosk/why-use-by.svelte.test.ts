import { expect, test } from 'vitest';
import { mountApp } from './mount-app.ts';
import { BASE, JUG } from './preview/base-state.ts';

test('a jug tells why it is good until then, and leads back', async () => {
  const app = mountApp(BASE, `jug/${JUG.id}`);
  app.click('why-use-by-door');
  const said = app.text('why-use-by');
  expect(said).toContain('good for 12 hours');
  expect(said).toContain('use a jug the day it is mixed unless the packet says otherwise');
  expect(said).not.toContain('month');
  app.click('why-back');
  expect(app.find('kept-jug')).not.toBeNull();
  await app.close();
});

test('a bottle tells when the month printed on it is what ends it', async () => {
  const keeps = {
    unit: 'days',
    value: 90,
    evidence: 'own-guard',
    source: 'as said',
    monthFirst: true,
  } as const;
  const app = mountApp({ ...BASE, jugs: [{ ...JUG, form: 'bottle', keeps }] }, `jug/${JUG.id}`);
  app.click('why-use-by-door');
  expect(app.text('why-use-by')).toContain('It was opened 11:40 and is good for 90 days.');
  expect(app.text('why-use-by')).toContain('The month printed on it is over sooner');
  await app.close();
});

test('nothing is told where what it came from is known no more', async () => {
  const app = mountApp({ ...BASE, jugs: [{ ...JUG, keeps: null }] }, `jug/${JUG.id}`);
  expect(app.find('why-use-by-door')).toBeNull();
  await app.close();
});
