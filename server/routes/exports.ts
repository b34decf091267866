import type { FastifyInstance } from 'fastify';
import type { ExportsView, ExportWritten } from '../../shared/exports.ts';
import { EXPORTS, ExportName } from '../exports/kinds.ts';
import { type Asked, type PeriodQuery, periodAsked } from '../exports/period.ts';
import { textStream } from '../exports/text-stream.ts';
import { writeWhole } from '../exports/write-file.ts';
import type { House } from '../house.ts';
import { qrCode } from '../print/qr-code.ts';

const NO_SUCH = 'There is no such file. GET /api/schema lists what can be taken along, as exports.';

interface Route {
  readonly Params: { readonly name: string };
  readonly Querystring: PeriodQuery;
}

/** The ways out for the records: a stream over HTTP, and a file in the folder of the configuration. */
export function addExportRoutes(app: FastifyInstance, { barn, standing, network }: House): void {
  const { context } = barn;

  /** What is asked for, or why it is not to be had. */
  function read(name: string, query: PeriodQuery) {
    const known = ExportName.safeParse(name);
    if (!known.success) return { ok: false, status: 404, why: NO_SUCH } as const;
    const asked = periodAsked(query, context.config.timeZone);
    if ('why' in asked) return { ok: false, status: 400, why: asked.why } as const;
    const kind = EXPORTS[known.data];
    return { ok: true, kind, asked, file: fileName(known.data, asked, kind.ending) } as const;
  }

  app.get(
    '/api/exports',
    async (): Promise<ExportsView> => ({
      folder: context.config.exportFolder ?? null,
      address: network.address,
    }),
  );
  app.get<Route>('/api/exports/:name', async ({ params, query }, reply) => {
    const found = read(params.name, query);
    if (!found.ok) return reply.code(found.status).send({ message: found.why });
    reply.type(found.kind.type).header('content-disposition', `attachment; filename="${found.file}"`);
    return reply.send(textStream(found.kind.pieces(context, found.asked)));
  });
  app.post<Route>('/api/exports/:name', async ({ params, query }, reply) => {
    const found = read(params.name, query);
    if (!found.ok) return reply.code(found.status).send({ message: found.why });
    const folder = context.config.exportFolder;
    const written: ExportWritten =
      folder === undefined || standing.problem !== null
        ? { ok: false, why: 'no-folder' }
        : await writeWhole(folder, found.file, textStream(found.kind.pieces(context, found.asked)));
    return reply.code(written.ok ? 200 : 409).send(written);
  });
  app.get<Route>('/api/exports/:name/qr.svg', async ({ params, query }, reply) => {
    const found = read(params.name, query);
    const { address } = network;
    if (!found.ok) return reply.code(found.status).send({ message: found.why });
    if (address === null) return reply.code(404).send({ message: 'This kiosk listens to itself alone.' });
    const asked = new URLSearchParams({ ...query });
    const svg = qrCode(`${address}/api/exports/${params.name}${asked.size === 0 ? '' : `?${asked}`}`).html;
    return reply.type('image/svg+xml').send(svg.replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" '));
  });
}

function fileName(name: string, { name: period }: Asked, ending: string): string {
  return name === 'calendar' ? `byreside-calendar.${ending}` : `byreside-${name}-${period}.${ending}`;
}
