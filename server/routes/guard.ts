import type { FastifyInstance } from 'fastify';

const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];

/**
 * Turns away requests that another site makes a browser send, and names that do not belong to this kiosk.
 *
 * On loopback only loopback names are served, so that a foreign name pointed at this address gets nowhere; a request
 * with an `Origin` must come from the page this server itself delivered.
 */
export function addGuard(app: FastifyInstance, boundTo: string): void {
  const loopbackOnly = LOOPBACK.includes(boundTo) || boundTo === '::1';
  app.addHook('onRequest', async (request, reply) => {
    const host = request.headers.host ?? '';
    const name = host.replace(/:\d+$/, '');
    if (loopbackOnly && !LOOPBACK.includes(name)) {
      return reply.code(421).send({ message: 'This kiosk answers to localhost only.' });
    }
    const { origin } = request.headers;
    if (origin !== undefined && origin !== `http://${host}` && origin !== `https://${host}`) {
      return reply.code(403).send({ message: 'Requests from other sites are not taken.' });
    }
    return undefined;
  });
  // A refused upgrade leaves its bare socket to us; kept open it would hold up the shutdown.
  app.addHook('onResponse', async (request, reply) => {
    if (request.headers.upgrade !== undefined && reply.statusCode >= 400) request.raw.socket.destroy();
  });
}
