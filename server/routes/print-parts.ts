import type { FastifyInstance } from 'fastify';
import type { House } from '../house.ts';
import { labelStyle } from '../print/label-style.ts';
import type { Paper } from '../print/print-page.ts';
import { registerStyle } from '../print/register-style.ts';
import { panelView } from '../view/state-view.ts';

/** Prints, and keeps the paper that is chosen: by an intent, since to read a page changes nothing. */
const SCRIPT = `document.getElementById('print').addEventListener('click', () => print());
for (const link of document.querySelectorAll('[data-paper]'))
  link.addEventListener('click', () => {
    const intent = { type: 'set-paper', id: crypto.randomUUID(), paper: link.dataset.paper };
    const headers = { 'content-type': 'application/json' };
    void fetch('/api/intents', { method: 'POST', keepalive: true, headers, body: JSON.stringify(intent) });
  });
`;
/** What a plate on a printed page measures on the panel. */
const PLATE_MM = 20;

/** The script and the style sheets of pages that print. */
export function addPrintParts(app: FastifyInstance, house: House): void {
  const platePx = () => Math.round(PLATE_MM * panelView(house.barn.context.config.panel).pxPerMm);
  app.get('/print/print.js', async (_, reply) => reply.type('text/javascript').send(SCRIPT));
  app.get<{ Querystring: { paper?: string } }>('/print/label.css', async ({ query }, reply) =>
    reply.type('text/css').send(labelStyle(paperOf(house, query.paper), platePx())),
  );
  app.get('/print/register.css', async (_, reply) => reply.type('text/css').send(registerStyle(platePx())));
}

/** The paper asked for; else the one that is kept. */
export function paperOf({ barn }: House, asked: string | undefined): Paper {
  return asked === 'a6' || asked === 'roll' ? asked : barn.context.memory.settings.paper;
}
