import type { FastifyInstance } from 'fastify';
import type { PeriodQuery } from '../exports/period.ts';
import { textStream } from '../exports/text-stream.ts';
import type { House } from '../house.ts';
import { FARM_ROOMS, farmPage } from '../office/farm-pages.ts';
import { OFFICE_POLICY, officeNote } from '../office/office-page.ts';
import { OFFICE_STYLE } from '../office/office-style.ts';
import { OFFICE_WORDS } from '../office/office-words.ts';

/** The office of this kiosk's farm: who may be milked and sold, the register, and what worked, for a desk. */
export function addOfficeRoutes(app: FastifyInstance, { barn }: House): void {
  const { context } = barn;
  app.get('/office/office.css', async (_, reply) => reply.type('text/css; charset=utf-8').send(OFFICE_STYLE));
  app.get('/office', async (_, reply) => reply.redirect('/office/board'));
  for (const room of FARM_ROOMS)
    app.get<{ Querystring: PeriodQuery }>(`/office/${room}`, async ({ query }, reply) => {
      const { language } = context.memory.settings;
      const page = farmPage(
        {
          records: context,
          name: null,
          area: null,
          pagesAt: '/office',
          filesAt: '/api/exports',
          ways: [{ href: '/', name: 'Byreside' }],
        },
        room,
        query,
      );
      reply.type('text/html; charset=utf-8').header('content-security-policy', OFFICE_POLICY);
      if ('why' in page) {
        const frame = { language, title: OFFICE_WORDS[language].rooms[room], ways: [] };
        return reply.code(400).send(officeNote(frame, page.why));
      }
      return reply.send(textStream(page));
    });
}
