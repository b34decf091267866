import { readFileSync } from 'node:fs';
import { log } from '../log.ts';
import { buildHubApp } from './app.ts';
import { COMMANDS, howToCall } from './commands.ts';
import { type HubDatabase, openHubDatabase } from './database.ts';
import { type HubEnvironment, isLoopback, readHubEnvironment } from './environment.ts';
import { FarmCopies } from './farm-copies.ts';

async function serve(database: HubDatabase, { folder, port, host, tls }: HubEnvironment): Promise<void> {
  const copies = new FarmCopies(database, folder);
  const app = buildHubApp({
    database,
    copies,
    tls: tls === null ? null : { cert: readFileSync(tls.cert, 'utf8'), key: readFileSync(tls.key, 'utf8') },
    log,
  });
  const end = () =>
    void app
      .close()
      .then(() => copies.close())
      .then(() => database.close())
      .then(() => process.exit(0));
  process.once('SIGINT', end);
  process.once('SIGTERM', end);
  const address = await app.listen({ port, host });
  console.log(`The hub is ready at ${address}`);
  if (tls === null && !isLoopback(host))
    console.log('It is served in the clear: put what ends TLS before it.');
}

async function run([name, ...words]: readonly string[]): Promise<void> {
  const command = name === undefined ? undefined : COMMANDS[name];
  if (name !== undefined && (command === undefined || words.length !== command.takes.length))
    throw new Error(`that is not how it is called:\n${howToCall()}`);
  const environment = readHubEnvironment(process.env);
  const database = await openHubDatabase(environment.database);
  if (command === undefined) return serve(database, environment);
  try {
    console.log(await command.run({ database, environment }, ...words));
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
