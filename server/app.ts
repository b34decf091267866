import fastify, { type FastifyError, type FastifyInstance } from 'fastify';
import type { House } from './house.ts';
import { addDayBookRoutes } from './routes/day-book.ts';
import { addExportRoutes } from './routes/exports.ts';
import { addFarmRoutes } from './routes/farm.ts';
import { addHerdRoutes } from './routes/herd.ts';
import { addHttpRoutes } from './routes/http.ts';
import { addMachineRoutes } from './routes/machine.ts';
import { addNetworkRoutes } from './routes/network.ts';
import { addOfficeRoutes } from './routes/office.ts';
import { addPages, pageScript } from './routes/pages.ts';
import { addPhotoRoutes } from './routes/photos.ts';
import { addPrintRoutes } from './routes/print.ts';
import { addSeasonRoutes } from './routes/season.ts';
import { addSocket } from './routes/socket.ts';
import { addSpeechRoutes } from './routes/speech.ts';
import { addStockRoutes } from './routes/stock.ts';
import { addWormCheckRoutes } from './routes/worm-check.ts';
import { addGuard } from './security/guard.ts';

/** What is asked is judged where it is read, by zod: Fastify's compilers of JSON Schema are not even loaded. */
const NO_SCHEMAS = { compilersFactory: { buildValidator: noSchema, buildSerializer: noSchema } };

function noSchema(): never {
  throw new Error('no route of this server says its schema to Fastify');
}

/** Builds the web server around a house, without listening. `pages` is the folder of the built kiosk, or `null`. */
export async function buildApp(
  house: House,
  boundTo: string,
  pages: string | null,
): Promise<FastifyInstance> {
  // A page that never lets go of its connection must not hold up the shutdown.
  const app = fastify({ forceCloseConnections: true, logger: false, schemaController: NO_SCHEMAS });
  addGuard(app, house, boundTo);
  app.setErrorHandler((error: FastifyError, _request, reply) => {
    const status = error.statusCode ?? 500;
    // A page of the file that cannot be read may show only when somebody asks for what stands on it.
    house.barn.context.disk.failed(error);
    if (status >= 500) house.log('a request failed', error);
    const message =
      status < 500 ? error.message : 'Something went wrong inside the kiosk; its log says what.';
    return reply.code(status).send({ ok: false, id: null, repeated: false, code: 'bad-input', message });
  });
  await addSocket(app, house, pages === null ? null : pageScript(pages));
  addHttpRoutes(app, house);
  addMachineRoutes(app, house);
  addDayBookRoutes(app, house);
  addHerdRoutes(app, house);
  addPhotoRoutes(app, house);
  addStockRoutes(app, house);
  addSeasonRoutes(app, house);
  addWormCheckRoutes(app, house);
  addPrintRoutes(app, house);
  addFarmRoutes(app, house);
  addOfficeRoutes(app, house);
  addExportRoutes(app, house);
  addSpeechRoutes(app, house);
  addNetworkRoutes(app, house);
  if (pages !== null) await addPages(app, pages);
  return app;
}
