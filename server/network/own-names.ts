import { hostname, networkInterfaces } from 'node:os';

/** Names by which a board calls itself and nobody else can reach it; without and with the brackets of an address bar. */
export const LOOPBACK_NAMES: readonly string[] = ['localhost', '127.0.0.1', '::1', '[::1]'];

/** The names a board has on its network, lower case. */
export function networkNames(): string[] {
  const own = hostname().toLowerCase();
  return [own, `${own}.local`];
}

/** The numbers a board has on its network, of the fourth version; the first is the one to be told. */
export function networkNumbers(): string[] {
  return Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address);
}
