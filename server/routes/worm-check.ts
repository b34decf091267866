import type { FastifyInstance } from 'fastify';
import type { House } from '../house.ts';
import { eggCountsView } from '../view/egg-view.ts';
import { planView } from '../view/plan-view.ts';
import { testPage, testsView } from '../view/test-view.ts';

/** What HTTP tells of egg counts and reduction tests. */
export function addWormCheckRoutes(app: FastifyInstance, { barn }: House): void {
  const { context } = barn;
  app.get('/api/egg-counts', async () => eggCountsView(context));
  app.get('/api/reduction-plan', async () => planView(context));
  app.get('/api/reduction-tests', async () => testsView(context));
  app.get<{ Params: { id: string } }>('/api/reduction-tests/:id', async ({ params }, reply) => {
    const page = testPage(context, params.id);
    return (
      page ?? reply.code(404).send({ message: 'There is no such test. GET /api/reduction-tests lists them.' })
    );
  });
}
