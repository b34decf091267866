import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { AnimalPage, WhomView } from '../../shared/animal-page.ts';
import { ChecksView } from '../../shared/checks.ts';
import { BookPageView } from '../../shared/day-book.ts';
import { TreatmentView } from '../../shared/dose.ts';
import { EggCountsView } from '../../shared/egg-count.ts';
import { EXPORT_NAMES } from '../../shared/export-names.ts';
import { Answer, Intent } from '../../shared/intent.ts';
import { PlanView, TestPage, TestsView } from '../../shared/reduction-test.ts';
import { KioskState } from '../../shared/state.ts';
import { WormRulesView } from '../../shared/worm-rules.ts';
import { refusal } from '../barn/barn.ts';
import type { House } from '../house.ts';
import { whyNotIntent } from '../security/may.ts';
import type { Visitor } from '../security/visitor.ts';
import { checksView } from '../view/checks-view.ts';
import { jugView } from '../view/jug-view.ts';
import { linkNext, type PageQuery, pageAsked } from './paging.ts';

/** Intents larger than this are refused unread. */
const BODY_LIMIT = 64 * 1024;

/** The HTTP side of the contract. */
export function addHttpRoutes(app: FastifyInstance, house: House): void {
  const { barn, standing } = house;
  const { context } = barn;

  app.get('/api/health', async () => ({
    ok: standing.problem === null,
    bootId: standing.bootId,
    demo: standing.demo,
    links: Object.fromEntries(standing.devices().map((device) => [device.role, device.link])),
    uptimeSeconds: Math.round(process.uptime()),
  }));
  app.get('/api/state', async () => house.state());
  app.get<{ Querystring: PageQuery }>('/api/jugs', async ({ query }, reply) => {
    const { wallMs } = context.clock.now();
    const { below, most } = pageAsked(query);
    const jugs = context.store.jugs.below(below, most);
    linkNext(reply, '/api/jugs', jugs.at(-1)?.number, most, jugs.length);
    return jugs.map((jug) => jugView(jug, wallMs, context.memory.formulary));
  });
  app.get('/api/checks', async () => checksView(context.store));
  app.get('/api/schema', async () => ({
    intent: z.toJSONSchema(Intent),
    answer: z.toJSONSchema(Answer),
    state: z.toJSONSchema(KioskState),
    treatment: z.toJSONSchema(TreatmentView),
    checks: z.toJSONSchema(ChecksView),
    animal: z.toJSONSchema(AnimalPage),
    whomToTreat: z.toJSONSchema(WhomView),
    dayBook: z.toJSONSchema(BookPageView),
    exports: z.toJSONSchema(z.enum(EXPORT_NAMES)),
    wormRules: z.toJSONSchema(WormRulesView),
    eggCounts: z.toJSONSchema(EggCountsView),
    reductionPlan: z.toJSONSchema(PlanView),
    reductionTests: z.toJSONSchema(TestsView),
    reductionTest: z.toJSONSchema(TestPage),
  }));
  app.post('/api/intents', { bodyLimit: BODY_LIMIT }, async (request, reply) => {
    const answer = answerTo(house, request.body, request.visitor);
    return reply.code(statusOf(answer)).send(answer);
  });
}

/**
 * Reads an intent from outside and has it handled in the name of whoever is at work there; what is no intent is refused
 * with what is wrong with it, and what its sender may not ask for with why.
 */
export function answerTo(house: House, body: unknown, visitor: Visitor): Answer {
  const parsed = Intent.safeParse(body);
  if (!parsed.success) {
    const id = z.looseObject({ id: z.string().max(64) }).safeParse(body);
    const type = z.looseObject({ type: z.unknown() }).safeParse(body);
    const issue = parsed.error.issues[0];
    const known = type.success && Intent.options.some((option) => option.shape.type.value === type.data.type);
    const where = issue === undefined || issue.path.length === 0 ? '' : `${issue.path.join('.')}: `;
    const detail = `${where}${issue?.message ?? 'not an object'}`;
    return refusal(id.success ? id.data.id : null, known ? 'bad-input' : 'unknown-intent', { detail });
  }
  if (house.standing.problem !== null) return refusal(parsed.data.id, 'not-configured');
  const why = whyNotIntent(visitor, parsed.data.type);
  if (why !== null) return refusal(parsed.data.id, why, house.barn.context.memory.settings);
  if (visitor.kind !== 'device') return house.barn.handle(parsed.data);
  house.network.worked(visitor);
  return house.barn.handle(parsed.data, 'screen', visitor.person);
}

function statusOf(answer: Answer): number {
  if (answer.ok) return 200;
  switch (answer.code) {
    case 'unknown-intent':
    case 'bad-input':
      return 400;
    case 'not-configured':
    case 'not-written':
      return 503;
    case 'not-paired':
      return 401;
    case 'follows-only':
    case 'needs-pin':
    case 'needs-set-up':
    case 'board-only':
      return 403;
    default:
      return 409;
  }
}
