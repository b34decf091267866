import { closeSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { buildHubApp } from './app.ts';
import { invite, listInvited, revoke } from './credentials.ts';
import { type HubDatabase, openHubDatabase } from './database.ts';
import { isLoopback, readHubEnvironment } from './environment.ts';

const HOW = `npm run hub                              serves the hub
npm run hub -- invite FARM KIOSK FILE    lets a kiosk in: writes FILE, to be carried to it on a stick
npm run hub -- revoke FARM KIOSK         shuts a kiosk out
npm run hub -- list FARM                 tells the kiosks of a farm`;

type Environment = ReturnType<typeof readHubEnvironment>;

async function serve(database: HubDatabase, { port, host, tls }: Environment): Promise<void> {
  const app = buildHubApp({
    database,
    tls: tls === null ? null : { cert: readFileSync(tls.cert, 'utf8'), key: readFileSync(tls.key, 'utf8') },
    log: (message, error) => console.error(`${new Date().toISOString()} ${message}:`, error),
  });
  const end = () =>
    void app
      .close()
      .then(() => database.close())
      .then(() => process.exit(0));
  process.once('SIGINT', end);
  process.once('SIGTERM', end);
  const address = await app.listen({ port, host });
  console.log(`The hub is ready at ${address}`);
  if (tls === null && !isLoopback(host))
    console.log('It is served in the clear: put what ends TLS before it.');
}

async function run([command, farm = '', name = '', file = '']: readonly string[]): Promise<void> {
  const environment = readHubEnvironment(process.env);
  const database = await openHubDatabase(environment.database);
  if (command === undefined) return serve(database, environment);
  try {
    if (command === 'invite' && file !== '') {
      const { address: hub, tls } = environment;
      const ca = tls === null ? null : readFileSync(tls.ca, 'utf8');
      // A file that cannot be written, or is there, is found out before anybody is let in.
      const open = openSync(file, 'wx', 0o600);
      const invitation = await invite(database, farm, name, { hub, ca });
      writeFileSync(open, `${JSON.stringify(invitation, null, 2)}\n`);
      closeSync(open);
      console.log(`Written to ${file}. Whoever holds it is "${name}" of ${farm}: it is a secret.`);
    } else if (command === 'revoke' && name !== '') {
      const shutOut = await revoke(database, farm, name);
      if (shutOut === 0) throw new Error(`no kiosk "${name}" of ${farm} is let in`);
      console.log(`"${name}" of ${farm} is shut out.`);
    } else if (command === 'list' && farm !== '') {
      for (const { name: each, joined, revoked } of await listInvited(database, farm))
        console.log(`${each}: ${revoked ? 'shut out' : joined ? 'joined' : 'invited, not seen yet'}`);
    } else throw new Error(`that is not how it is called:\n${HOW}`);
  } finally {
    await database.close();
  }
}

try {
  await run(process.argv.slice(process.argv[2] === 'server/hub/main.js' ? 3 : 2));
} catch (error) {
  console.error(`The hub did not do it: ${error instanceof Error ? error.message : String(error)}.`);
  process.exit(1);
}
