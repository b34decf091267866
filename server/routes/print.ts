import type { FastifyInstance } from 'fastify';
import { approves } from '../../core/medicine/approval.ts';
import { medicineById } from '../../core/medicine/formulary.ts';
import { regimenInForce } from '../../core/medicine/in-force.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import { type Memory, syringesOnHand } from '../barn/memory.ts';
import type { House } from '../house.ts';
import { html } from '../print/html.ts';
import { jugLabel } from '../print/jug-label.ts';
import { type Paper, printPage } from '../print/print-page.ts';
import { PRINT_WORDS } from '../print/print-words.ts';
import { printedTable } from '../print/printed-table.ts';
import { panelView } from '../view/state-view.ts';

const SCRIPT = "document.getElementById('print').addEventListener('click', () => print());\n";
/** The page holds its own style and one script of this server's. */
const POLICY = "default-src 'none'; script-src 'self'; style-src 'unsafe-inline'; frame-ancestors 'none'";

/** Pages that print: the label of a jug with its dose tables. Plain HTML, so that they print from any browser. */
export function addPrintRoutes(app: FastifyInstance, { barn }: House): void {
  app.get('/print/print.js', async (_, reply) => reply.type('text/javascript').send(SCRIPT));
  app.get<{ Params: { id: string }; Querystring: { paper?: string } }>(
    '/print/jug/:id',
    async ({ params, query }, reply) => {
      const { memory, config } = barn.context;
      const { pxPerMm } = panelView(config.panel);
      const paper: Paper = query.paper === 'roll' ? 'roll' : 'a6';
      const jug = jugToPrint(memory, params.id);
      reply.type('text/html; charset=utf-8').header('content-security-policy', POLICY);
      if (jug === undefined) {
        const missing = html`<section><h1>${PRINT_WORDS.noJug}</h1><p>${PRINT_WORDS.noJugDetail}</p></section>`;
        return reply
          .code(404)
          .send(printPage({ title: PRINT_WORDS.noJug, paper, back: '/#jug', pxPerMm, sections: [missing] }));
      }
      const back = memory.mixing.step === 'label' ? '/#jug' : `/#jug/${encodeURIComponent(jug.id)}`;
      const title = PRINT_WORDS.jug(jug.number);
      return reply.send(printPage({ title, paper, back, pxPerMm, sections: jugPages(memory, jug) }));
    },
  );
}

/** A jug in service, or the one whose label is being written: it is not stored yet. */
function jugToPrint({ jugs, mixing }: Memory, id: string): Jug | undefined {
  return mixing.step === 'label' && mixing.jug.id === id ? mixing.jug : jugs.find((jug) => jug.id === id);
}

function jugPages(memory: Memory, jug: Jug) {
  const medicine = medicineById(memory.formulary, jug.medicineId);
  if (medicine === undefined) return [];
  const approved = medicine.regimens.flatMap((rule) => {
    if (rule.presentationIds?.includes(jug.packetId) === false) return [];
    const approval = memory.approvals.find((candidate) => approves(candidate, rule));
    const regimen = approval === undefined ? null : regimenInForce(rule, approval);
    return approval === undefined || regimen === null ? [] : [{ regimen, approval }];
  });
  const tables = approved.map((each) =>
    printedTable(each, jug, syringesOnHand(memory), memory.settings.weightUnit),
  );
  const none = html`<section><p class="warn">${PRINT_WORDS.noRule}</p></section>`;
  return [
    jugLabel(jug, medicine),
    ...(jug.discardedAtMs !== null ? [] : tables.length > 0 ? tables : [none]),
  ];
}
