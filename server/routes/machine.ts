import type { FastifyInstance } from 'fastify';
import type { Registry } from 'prom-client';
import type { House } from '../house.ts';

/** What HTTP tells of the board and the kiosk on it: for the screen, and for whoever watches many. */
export function addMachineRoutes(app: FastifyInstance, house: House): void {
  let metrics: Registry | null = null;
  app.get('/api/machine', async () => house.machine());
  app.get('/api/metrics', async (_request, reply) => {
    // Measuring costs time and memory: it is fetched, and begins, with the first who asks.
    metrics ??= (await import('../machine/metrics.ts')).createMetrics(house);
    return reply.type(metrics.contentType).send(await metrics.metrics());
  });
}
