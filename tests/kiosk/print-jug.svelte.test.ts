import { afterEach, expect, test, vi } from 'vitest';
import { mountApp } from './mount-app.ts';
import { SCENES } from './preview/scenes.ts';

afterEach(() => vi.restoreAllMocks());

test.each([
  ['jug-label', '/print/jug/j7'],
  ['jug-kept', '/print/jug/j7'],
])('one tap on %s leads to the page that prints', async (name, address) => {
  const scene = SCENES.find((each) => each.name === name);
  const app = mountApp(scene?.state ?? null, scene?.place);
  const assign = vi.spyOn(location, 'assign').mockImplementation(() => undefined);
  app.click('print');
  expect(assign.mock.calls).toEqual([[address]]);
  await app.close();
});
