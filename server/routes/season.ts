import type { FastifyInstance } from 'fastify';
import { refusal } from '../barn/barn.ts';
import type { House } from '../house.ts';
import { LARGEST_WEATHER_FILE } from '../season/weather-import.ts';
import { seasonView, weatherImportView } from '../view/season-view.ts';
import { bytesOf, count } from './asked.ts';

/** How many faults of a weather file are told at once, unless more are asked for. */
const FAULTS = 20;
const MOST_FAULTS = 1000;

/** What HTTP tells of the season, and the way in for a weather file. */
export function addSeasonRoutes(app: FastifyInstance, { barn, standing }: House): void {
  const { context } = barn;
  app.get('/api/season', async () => seasonView(context));
  app.get<{ Querystring: { from?: string; count?: string } }>('/api/weather-import', async ({ query }) =>
    weatherImportView(context, count(query.from, 0), Math.min(count(query.count, FAULTS), MOST_FAULTS)),
  );
  app.post<{ Querystring: { name?: string } }>(
    '/api/weather-import',
    { bodyLimit: LARGEST_WEATHER_FILE },
    async ({ body, query }, reply) => {
      if (standing.problem !== null) return reply.code(503).send(refusal(null, 'not-configured'));
      await context.weatherImport.take(query.name?.slice(0, 255) ?? 'file', bytesOf(body), null);
      barn.changed();
      return weatherImportView(context, 0, FAULTS);
    },
  );
}
