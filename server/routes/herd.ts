import type { FastifyInstance } from 'fastify';
import { refusal } from '../barn/barn.ts';
import { adviceNow, type HerdAdvice } from '../herd/advice-now.ts';
import { LARGEST_FILE, UNASKED } from '../herd/herd-file.ts';
import type { House } from '../house.ts';
import { animalPage, whomView } from '../view/animal-page.ts';
import { animalView } from '../view/animal-view.ts';
import { type GroupChoice, groupsView } from '../view/group-view.ts';
import { importView } from '../view/import-view.ts';
import { wormRulesView } from '../view/worm-rules-view.ts';
import { bytesOf, count } from './asked.ts';

/** How many faults of a herd file are told at once, unless more are asked for. */
const FAULTS = 20;
const MOST_FAULTS = 1000;

/** Whom a group is made of: one pen, one class, those to treat by their scores, or all; some may be left out. */
interface GroupQuery {
  readonly pen?: string;
  readonly class?: string;
  readonly whom?: string;
  readonly without?: string;
}

function groupChoice({ pen, class: kind, whom, without }: GroupQuery, advice: HerdAdvice): GroupChoice {
  return {
    of: (animal) =>
      (pen === undefined || animal.pen === pen) &&
      (kind === undefined || animal.class === kind) &&
      (whom === undefined || advice.byAnimal.get(animal.id)?.advice === 'treat'),
    without: typeof without === 'string' ? without.split(',').filter(Boolean) : [],
  };
}

/** What HTTP tells of the herd, and the way in for a herd file. */
export function addHerdRoutes(app: FastifyInstance, { barn, standing }: House): void {
  const { context } = barn;
  app.get('/api/animals', async () => {
    const herd = adviceNow(context);
    return context.memory.animals.map((animal) => animalView(animal, herd, context.memory));
  });
  app.get<{ Params: { id: string } }>('/api/animals/:id', async ({ params }, reply) => {
    const page = animalPage(context, params.id);
    return page ?? reply.code(404).send({ message: 'There is no such animal. GET /api/animals lists them.' });
  });
  app.get('/api/whom-to-treat', async () => whomView(context));
  app.get('/api/worm-rules', async () => wormRulesView(context.memory));
  app.get<{ Params: { jug: string }; Querystring: GroupQuery }>(
    '/api/groups/:jug',
    async ({ params, query }, reply) => {
      const view = groupsView(context, params.jug, groupChoice(query, adviceNow(context)));
      return view ?? reply.code(404).send({ message: 'There is no such jug. GET /api/jugs lists them.' });
    },
  );
  app.get<{ Querystring: { from?: string; count?: string } }>('/api/import', async ({ query }) =>
    importView(context, count(query.from, 0), Math.min(count(query.count, FAULTS), MOST_FAULTS)),
  );
  // A file is whatever bytes come: what they say is for the reading to judge.
  app.addContentTypeParser(
    ['text/csv', 'application/octet-stream'],
    { parseAs: 'buffer' },
    (_request, body, done) => done(null, body),
  );
  app.post<{ Querystring: { name?: string } }>(
    '/api/import',
    { bodyLimit: LARGEST_FILE },
    async ({ body, query }, reply) => {
      if (standing.problem !== null) return reply.code(503).send(refusal(null, 'not-configured'));
      await context.herdFile.take(query.name?.slice(0, 255) ?? 'file', bytesOf(body), {
        sayings: UNASKED,
        herd: context.memory.animals,
      });
      barn.changed();
      return importView(context, 0, FAULTS);
    },
  );
}
