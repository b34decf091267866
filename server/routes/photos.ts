import type { FastifyInstance } from 'fastify';
import { refusal } from '../barn/barn.ts';
import { LARGEST_PHOTO, PHOTO_TYPES } from '../herd/photos.ts';
import type { House } from '../house.ts';

/** The way in and out for photos: bytes come in under a new name, which an intent then gives to an animal. */
export function addPhotoRoutes(app: FastifyInstance, { barn, standing, log }: House): void {
  const { photos } = barn.context;
  app.addContentTypeParser(Object.values(PHOTO_TYPES), { parseAs: 'buffer' }, (_request, body, done) =>
    done(null, body),
  );
  app.post('/api/photos', { bodyLimit: LARGEST_PHOTO }, async ({ body }, reply) => {
    if (standing.problem !== null) return reply.code(503).send(refusal(null, 'not-configured'));
    try {
      const added = photos.add(Buffer.isBuffer(body) ? body : Buffer.alloc(0));
      return added.ok ? { name: added.name } : reply.code(422).send(refusal(null, added.why));
    } catch (error) {
      log('a photo could not be kept', error);
      return reply.code(507).send(refusal(null, 'not-written'));
    }
  });
  app.get<{ Params: { name: string } }>('/api/photos/:name', async ({ params }, reply) => {
    const photo = photos.read(params.name);
    if (photo === null) return reply.code(404).send({ message: 'There is no such photo.' });
    return (
      reply
        .type(photo.type)
        // A photo is never changed under its name.
        .header('cache-control', 'private, max-age=31536000, immutable')
        .header('content-security-policy', "default-src 'none'")
        .send(photo.bytes)
    );
  });
}
