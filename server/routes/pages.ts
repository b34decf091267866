import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';

/** What the page may load: its own files, and its own socket; no script or style that stands within a page. */
const POLICY =
  "default-src 'self'; connect-src 'self' ws: wss:; img-src 'self' data:; base-uri 'none'; object-src 'none'; frame-ancestors 'none'";

/** The file name of the script that the page in a folder begins with, or `null` where there is no such page. */
export function pageScript(folder: string): string | null {
  const file = join(folder, 'index.html');
  if (!existsSync(file)) return null;
  return /<script[^>]* src="[^"]*?([^"/]+)"/.exec(readFileSync(file, 'utf8'))?.[1] ?? null;
}

/** Serves the built kiosk from a folder. */
export async function addPages(app: FastifyInstance, folder: string): Promise<void> {
  await app.register(fastifyStatic, {
    root: folder,
    // Set by hand below: hashed files never change, the page itself always may.
    cacheControl: false,
    setHeaders(response, path) {
      const hashed = path.includes('/assets/');
      response.setHeader('cache-control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
      response.setHeader('content-security-policy', POLICY);
    },
  });
  app.setNotFoundHandler((request, reply) => {
    if (request.url.startsWith('/api') || request.url.startsWith('/ws') || request.method !== 'GET') {
      return reply
        .code(404)
        .send({ message: 'There is nothing here. GET /api/schema lists what the kiosk knows.' });
    }
    return reply.sendFile('index.html');
  });
}
