import { afterEach, expect, test } from 'vitest';
import { type MountedApp, mountApp } from './mount-app.ts';
import { BASE } from './preview/base-state.ts';
import { soon } from './soon.ts';

let app: MountedApp | undefined;
afterEach(() => app?.close());

test('one tap copies the records at once', async () => {
  app = mountApp(BASE, 'shed/copies');
  const page = app;
  await soon(() => page.click('copy-now'));
  expect(page.socket.intents).toEqual([{ type: 'back-up-now', id: expect.any(String) }]);
});
