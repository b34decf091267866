import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { loadMemory } from '../../../server/barn/memory.ts';
import { createPhotos } from '../../../server/herd/photos.ts';
import { jpeg } from '../make/pictures.ts';
import { testApp } from '../make/test-app.ts';
import { GOAT, testBarn } from '../make/test-barn.ts';

const headers = { host: 'localhost:4180', 'content-type': 'image/jpeg' };

async function photoApp() {
  let made = 0;
  const photos = createPhotos(mkdtempSync(join(tmpdir(), 'photos-')), () => `p${++made}`);
  return testApp(null, testBarn(':memory:', undefined, { photos }));
}

describe('a photo', () => {
  test('comes in by HTTP, is given to its animal by an intent, and is served as a picture and nothing else', async () => {
    const { app, test: barn } = await photoApp();
    const posted = await app.inject({ method: 'POST', url: '/api/photos', headers, payload: jpeg(900) });
    expect(posted.json()).toEqual({ name: 'p1.jpg' });
    const edit = { what: 'photo', photo: 'p1.jpg' } as const;
    expect(barn.send({ type: 'edit-animal', animalId: GOAT.id, edit }).ok).toBe(true);
    expect(barn.barn.context.memory.animals.find(({ id }) => id === GOAT.id)?.photo).toBe('p1.jpg');
    const { settings, animals } = barn.barn.context.memory;
    expect(loadMemory(barn.store, settings).animals).toEqual(animals);
    const got = await app.inject({ url: '/api/photos/p1.jpg', headers: { host: 'localhost:4180' } });
    expect(got.rawPayload).toEqual(jpeg(900));
    expect(got.headers).toMatchObject({
      'content-type': 'image/jpeg',
      'x-content-type-options': 'nosniff',
      'content-security-policy': "default-src 'none'",
    });
    expect(got.headers['cache-control']).toContain('immutable');
    await app.close();
  });

  test('that is none is refused with a remedy, and one not kept is given to nobody', async () => {
    const { app, test: barn } = await photoApp();
    const posted = await app.inject({
      method: 'POST',
      url: '/api/photos',
      headers,
      payload: Buffer.from('hello'),
    });
    expect([posted.statusCode, posted.json().code]).toEqual([422, 'not-a-photo']);
    const large = await app.inject({
      method: 'POST',
      url: '/api/photos',
      headers,
      payload: jpeg(400 * 1024),
    });
    expect(large.statusCode).toBe(413);
    const edit = { what: 'photo', photo: 'p9.jpg' } as const;
    expect(barn.send({ type: 'edit-animal', animalId: GOAT.id, edit })).toMatchObject({
      code: 'no-such-photo',
    });
    const got = await app.inject({ url: '/api/photos/p9.jpg', headers: { host: 'localhost:4180' } });
    expect(got.statusCode).toBe(404);
    await app.close();
  });

  test('that the disk does not take is told of, and nothing is half written', async () => {
    const { app } = await testApp();
    const posted = await app.inject({ method: 'POST', url: '/api/photos', headers, payload: jpeg() });
    expect([posted.statusCode, posted.json().code]).toEqual([507, 'not-written']);
    await app.close();
  });
});
