import type { FastifyInstance } from 'fastify';
import type { House } from '../house.ts';
import { stockLotPage, stockView } from '../view/stock-view.ts';

/** What HTTP tells of the stock. */
export function addStockRoutes(app: FastifyInstance, { barn }: House): void {
  app.get('/api/stock', async () => stockView(barn.context));
  app.get<{ Params: { id: string } }>('/api/stock/:id', async ({ params }, reply) => {
    const page = stockLotPage(barn.context, params.id);
    return page ?? reply.code(404).send({ message: 'There is no such lot. GET /api/stock lists them.' });
  });
}
