import type { FastifyInstance } from 'fastify';
import { adviceNow } from '../herd/advice-now.ts';
import type { House } from '../house.ts';
import { animalPage, whomView } from '../view/animal-page.ts';
import { animalView } from '../view/animal-view.ts';

/** What HTTP tells of the herd. */
export function addHerdRoutes(app: FastifyInstance, { barn }: House): void {
  const { context } = barn;
  app.get('/api/animals', async () => {
    const herd = adviceNow(context);
    return context.memory.animals.map((animal) => animalView(animal, herd));
  });
  app.get<{ Params: { id: string } }>('/api/animals/:id', async ({ params }, reply) => {
    const page = animalPage(context, params.id);
    return page ?? reply.code(404).send({ message: 'There is no such animal. GET /api/animals lists them.' });
  });
  app.get('/api/whom-to-treat', async () => whomView(context));
}
