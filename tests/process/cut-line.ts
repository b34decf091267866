import { connect, createServer, type Server, type Socket } from 'node:net';

/** A line between two processes that can be cut as a cable is: without a word to either end. */
export interface CutLine {
  /** The address to use in place of the far end's. */
  readonly address: string;
  /** From now on nothing arrives in either direction; connections look as if they stood. */
  cut(): void;
  /** New connections arrive again; those that were cut stay dead. */
  mend(): void;
  stop(): Promise<void>;
}

/** Lays a line to an address. */
export async function layLine(to: string): Promise<CutLine> {
  const { hostname, port } = new URL(to);
  const dead = new WeakSet<Socket>();
  const open = new Set<Socket>();
  let isCut = false;
  const server: Server = createServer((near) => {
    keep(near);
    if (isCut) return void near.pause();
    const far = keep(connect(Number(port), hostname));
    pass(near, far);
    pass(far, near);
  });

  function keep(socket: Socket): Socket {
    open.add(socket);
    socket.on('error', () => socket.destroy());
    socket.on('close', () => open.delete(socket));
    return socket;
  }

  function pass(from: Socket, onto: Socket): void {
    from.on('data', (bytes) => {
      if (!dead.has(from)) onto.write(bytes);
    });
    from.on('close', () => {
      if (!dead.has(from)) onto.destroy();
    });
  }

  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  return {
    address: `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : 0}`,
    cut() {
      isCut = true;
      for (const socket of open) dead.add(socket);
    },
    mend() {
      isCut = false;
    },
    async stop() {
      const closed = new Promise((resolve) => server.close(resolve));
      for (const socket of open) socket.destroy();
      await closed;
    },
  };
}
