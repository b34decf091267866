import { createServer as createHttpServer, type Server } from 'node:http';
import { createServer as createHttpsServer, type Server as HttpsServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import type { FastifyInstance } from 'fastify';
import type { OwnCertificate } from './certificate.ts';

/** How other devices come in: by the board's own encryption, or handed on by a proxy on the board that has its own. */
export type Entrance =
  | { readonly by: 'tls'; readonly port: number; readonly certificate: OwnCertificate }
  | { readonly by: 'proxy'; readonly port: number };

/** How a connection came in: the door of the board itself, or one of those for other devices. */
export type Way = 'board' | Entrance['by'];

/** How many connections of other devices there may be at once. */
const MOST_CONNECTIONS = 256;
/** Whoever sends slower than this holds a connection for nothing. */
const TIMES = { headersTimeout: 10_000, requestTimeout: 60_000, keepAliveTimeout: 5000 };

/** The second door of the kiosk, for other devices: opened and closed while the board's own stands. */
export class Door {
  readonly #ways = new WeakMap<object, Way>();
  #server: Server | HttpsServer | null = null;

  /** How a connection came in. */
  wayOf(socket: object): Way {
    return this.#ways.get(socket) ?? 'board';
  }

  /** Opens it in front of an app that is ready; comes to the port. Rejects where the port is taken. */
  async open(app: FastifyInstance, entrance: Entrance): Promise<number> {
    await this.close();
    const answer = (...[request, response]: Parameters<typeof app.routing>) => app.routing(request, response);
    const server =
      entrance.by === 'proxy'
        ? createHttpServer(TIMES, answer)
        : createHttpsServer(
            { ...TIMES, ...entrance.certificate, minVersion: 'TLSv1.2', handshakeTimeout: 10_000 },
            answer,
          );
    server.maxConnections = MOST_CONNECTIONS;
    server.on(entrance.by === 'proxy' ? 'connection' : 'secureConnection', (socket: object) =>
      this.#ways.set(socket, entrance.by),
    );
    // The socket's own plugin listens at the board's door.
    server.on('upgrade', (...upgrade) => app.server.emit('upgrade', ...upgrade));
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      // A proxy that is asked for stands on the board itself.
      server.listen(
        { port: entrance.port, host: entrance.by === 'proxy' ? '127.0.0.1' : '0.0.0.0' },
        resolve,
      );
    });
    this.#server = server;
    return (server.address() as AddressInfo).port;
  }

  /** Shows a renewed certificate to whoever comes from here on. */
  renew({ key, cert }: OwnCertificate): void {
    if (this.#server !== null && 'setSecureContext' in this.#server)
      this.#server.setSecureContext({ key, cert });
  }

  /** Closes it; whoever is inside by HTTP is cut off. */
  async close(): Promise<void> {
    const server = this.#server;
    this.#server = null;
    if (server === null) return;
    await new Promise((resolve) => {
      server.close(resolve);
      server.closeAllConnections();
    });
  }
}
