import type { FastifyInstance } from 'fastify';
import { approves } from '../../core/medicine/approval.ts';
import { medicineById } from '../../core/medicine/formulary.ts';
import { regimenInForce } from '../../core/medicine/in-force.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import { type Memory, syringesOnHand } from '../barn/memory.ts';
import { roundWorld } from '../barn/run-round.ts';
import { exportWorld, registerLines } from '../exports/kinds.ts';
import { type PeriodQuery, periodAsked } from '../exports/period.ts';
import { textStream } from '../exports/text-stream.ts';
import type { House } from '../house.ts';
import { groupSections } from '../print/group-page.ts';
import { groupPlans } from '../print/group-plan.ts';
import { html } from '../print/html.ts';
import { jugLabel } from '../print/jug-label.ts';
import { type Paper, printPage } from '../print/print-page.ts';
import { printedTable } from '../print/printed-table.ts';
import { type Printing, printingOf } from '../print/printing.ts';
import { registerPage } from '../print/register-page.ts';
import { addPrintParts, paperOf } from './print-parts.ts';

/** The page has a style sheet and a script of this server's, which may tell the server of the paper. */
const POLICY =
  "default-src 'none'; script-src 'self'; connect-src 'self'; style-src 'self'; frame-ancestors 'none'";

/** Pages that print: the label of a jug with its dose tables. Plain HTML, so that they print from any browser. */
export function addPrintRoutes(app: FastifyInstance, house: House): void {
  const { barn } = house;
  addPrintParts(app, house);
  addGroupPage(app, house);
  addRegisterPage(app, house);
  app.get<{ Params: { id: string }; Querystring: { paper?: string } }>(
    '/print/jug/:id',
    async ({ params, query }, reply) => {
      const { memory } = barn.context;
      const printing = printingOf(barn.context);
      const paper = paperOf(house, query.paper);
      const jug = jugToPrint(memory, params.id) ?? barn.context.store.jugs.find(params.id);
      reply.type('text/html; charset=utf-8').header('content-security-policy', POLICY);
      if (jug === undefined) return reply.code(404).send(noJug(paper, printing));
      const back = memory.mixing.step === 'label' ? '/#jug' : `/#jug/${encodeURIComponent(jug.id)}`;
      const title = printing.words.jug(jug.number);
      const href = `/print/group/${encodeURIComponent(jug.id)}?paper=${paper}`;
      const onward = memory.jugs.includes(jug) ? { onward: { href, name: printing.groups.open } } : {};
      return reply.send(
        printPage({
          title,
          paper,
          back,
          sections: jugPages(memory, jug, printing),
          printing,
          ...onward,
        }),
      );
    },
  );
}

/** The herd in groups that one dose fits; `without` names the animals left out, apart by commas. */
function addGroupPage(app: FastifyInstance, house: House): void {
  const { barn } = house;
  app.get<{ Params: { id: string }; Querystring: { paper?: string; without?: string } }>(
    '/print/group/:id',
    async ({ params, query }, reply) => {
      const { memory } = barn.context;
      const printing = printingOf(barn.context);
      const paper = paperOf(house, query.paper);
      const jug = memory.jugs.find(({ id }) => id === params.id);
      reply.type('text/html; charset=utf-8').header('content-security-policy', POLICY);
      if (jug === undefined) return reply.code(404).send(noJug(paper, printing));
      const without = typeof query.without === 'string' ? query.without.split(',').filter(Boolean) : [];
      const unanswered = memory.round.unanswered.map(({ animal }) => animal.id);
      const { animals, settings } = memory;
      const toggle = (id: string): string => {
        const next = without.includes(id) ? without.filter((other) => other !== id) : [...without, id];
        return `?paper=${paper}&without=${next.map(encodeURIComponent).join(',')}`;
      };
      const plans = groupPlans(jug, without, unanswered, roundWorld(barn.context));
      const sections = plans.flatMap((plan) =>
        groupSections(plan, jug, animals, settings.weightUnit, toggle, printing),
      );
      const { groups: words } = printing;
      const lead = sections.length === 0 ? [words.none] : [...words.only, words.split];
      const head = html`<section class="label"><h1>${words.title(jug.number)}</h1>${lead.map((line) => html`<p class="warn">${line}</p>`)}</section>`;
      return reply.send(
        printPage({
          title: words.title(jug.number),
          paper,
          asked: `without=${without.map(encodeURIComponent).join(',')}`,
          back: `/print/jug/${encodeURIComponent(jug.id)}?paper=${paper}`,
          sections: [head, ...sections],
          printing,
        }),
      );
    },
  );
}

/** The treatment register of some days, of one animal or all. */
function addRegisterPage(app: FastifyInstance, { barn }: House): void {
  app.get<{ Querystring: PeriodQuery }>('/print/register', async ({ query }, reply) => {
    const { context } = barn;
    const { timeZone } = context.config;
    const asked = periodAsked(query, timeZone);
    reply.type('text/html; charset=utf-8').header('content-security-policy', POLICY);
    if ('why' in asked)
      return reply.code(400).send(html`<!doctype html><title>400</title><p>${asked.why}</p>`.html);
    const world = exportWorld(context);
    const printing = printingOf(context);
    const words = printing.register;
    const period =
      query.from === undefined && query.to === undefined
        ? words.everything
        : words.period(query.from, query.to);
    const animal =
      asked.animalId === null
        ? ''
        : ` ${words.of(world.animals.get(asked.animalId)?.name ?? asked.animalId)}`;
    const head = {
      asked: period + animal,
      printedAtMs: context.clock.now().wallMs,
      printing,
      back: '/#day-book/take',
    };
    return reply.send(textStream(registerPage(registerLines(context, asked, words.corrections), head)));
  });
}

function noJug(paper: Paper, printing: Printing): string {
  const { words } = printing;
  const sections = [html`<section><h1>${words.noJug}</h1><p>${words.noJugDetail}</p></section>`];
  return printPage({ title: words.noJug, paper, back: '/#jug', sections, printing });
}

/** A jug in service, or the one whose label is being written: it is not stored yet. */
function jugToPrint({ jugs, mixing }: Memory, id: string): Jug | undefined {
  return mixing.step === 'label' && mixing.jug.id === id ? mixing.jug : jugs.find((jug) => jug.id === id);
}

function jugPages(memory: Memory, jug: Jug, printing: Printing) {
  const medicine = medicineById(memory.formulary, jug.medicineId);
  if (medicine === undefined) return [];
  const approved = medicine.regimens.flatMap((rule) => {
    if (rule.presentationIds?.includes(jug.packetId) === false) return [];
    const approval = memory.approvals.find((candidate) => approves(candidate, rule));
    const regimen = approval === undefined ? null : regimenInForce(rule, approval);
    return approval === undefined || regimen === null ? [] : [{ regimen, approval }];
  });
  const tables = approved.map((each) =>
    printedTable(each, jug, syringesOnHand(memory), memory.settings.weightUnit, printing),
  );
  const none = html`<section><p class="warn">${printing.words.noRule}</p></section>`;
  return [
    jugLabel(jug, medicine, printing),
    ...(jug.discardedAtMs !== null ? [] : tables.length > 0 ? tables : [none]),
  ];
}
