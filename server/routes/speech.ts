import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import type { House } from '../house.ts';

const File = z.string().regex(/^\d{1,15}\.wav$/);

/** `GET /api/speech/:id.wav`: the sound of an utterance that is being said, for as long as it may be asked for. */
export function addSpeechRoutes(app: FastifyInstance, { speaker }: House): void {
  app.get<{ Params: { file: string } }>('/api/speech/:file', async (request, reply) => {
    const file = File.safeParse(request.params.file);
    const wav = file.success ? speaker.wav(Number.parseInt(file.data, 10)) : null;
    if (wav === null) return reply.code(404).send({ message: 'That is not being said.' });
    // Numbers begin anew with each start of the server.
    return reply.header('cache-control', 'no-store').type('audio/wav').send(Buffer.from(wav.bytes));
  });
}
