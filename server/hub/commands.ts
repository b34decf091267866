import { closeSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { isTimeZone } from '../../core/dosing/local-time.ts';
import { invite, listInvited, revoke } from './credentials.ts';
import type { HubDatabase } from './database.ts';
import type { HubEnvironment } from './environment.ts';
import { letIn, placeFarm, shutOffice } from './office-grants.ts';
import { closeOffice, makeOffice } from './offices.ts';

/** Something the hub's operator does, by words after `npm run hub --`. */
interface Command {
  /** What it is called with. */
  readonly takes: readonly string[];
  readonly does: string;
  /** Does it, and answers what there is to say. Throws where it cannot. */
  readonly run: (at: HubAt, ...words: string[]) => Promise<string>;
}

interface HubAt {
  readonly database: HubDatabase;
  readonly environment: HubEnvironment;
}

/** What can be asked of the hub besides serving. */
export const COMMANDS: Readonly<Record<string, Command>> = {
  invite: {
    takes: ['FARM', 'KIOSK', 'FILE'],
    does: 'lets a kiosk in: writes FILE, to be carried to it on a stick',
    async run({ database, environment }, farm = '', kiosk = '', file = '') {
      const { address: hub, tls } = environment;
      const ca = tls === null ? null : readFileSync(tls.ca, 'utf8');
      await intoFile(file, () => invite(database, farm, kiosk, { hub, ca }));
      return `Written to ${file}. Whoever holds it is "${kiosk}" of ${farm}: it is a secret.`;
    },
  },
  revoke: {
    takes: ['FARM', 'KIOSK'],
    does: 'shuts a kiosk out',
    async run({ database }, farm = '', kiosk = '') {
      if ((await revoke(database, farm, kiosk)) === 0)
        throw new Error(`no kiosk "${kiosk}" of ${farm} is let in`);
      return `"${kiosk}" of ${farm} is shut out.`;
    },
  },
  list: {
    takes: ['FARM'],
    does: 'tells the kiosks of a farm',
    async run({ database }, farm = '') {
      const invited = await listInvited(database, farm);
      return invited
        .map(({ name, joined, revoked }) => {
          return `${name}: ${revoked ? 'shut out' : joined ? 'joined' : 'invited, not seen yet'}`;
        })
        .join('\n');
    },
  },
  place: {
    takes: ['FARM', 'AREA', 'ZONE'],
    does: 'says where a farm lies, and its time zone, such as Europe/Dublin',
    async run({ database }, farm = '', area = '', timeZone = '') {
      if (!isTimeZone(timeZone)) throw new Error(`"${timeZone}" is no time zone: write it as Europe/Dublin`);
      await placeFarm(database, farm, { area, timeZone });
      return `${farm} lies in ${area}.`;
    },
  },
  office: {
    takes: ['NAME', 'FILE'],
    does: 'makes an office that reads: writes FILE with its key',
    async run({ database, environment }, name = '', file = '') {
      await intoFile(file, async () => {
        const made = await makeOffice(database, name);
        return { at: `${environment.address}/office`, name, ...made };
      });
      return `Written to ${file}. Whoever has the key in it reads what farms let it: it is a secret.`;
    },
  },
  'let-in': {
    takes: ['FARM', 'OFFICE'],
    does: 'lets an office read a farm',
    async run({ database }, farm = '', office = '') {
      await letIn(database, farm, office);
      return `${farm} lets the office in.`;
    },
  },
  'shut-out': {
    takes: ['FARM', 'OFFICE'],
    does: 'lets an office read a farm no more',
    async run({ database }, farm = '', office = '') {
      if (!(await shutOffice(database, farm, office))) throw new Error(`${farm} lets no such office in`);
      return `${farm} lets the office in no more.`;
    },
  },
  close: {
    takes: ['OFFICE'],
    does: 'closes an office for all farms',
    async run({ database }, office = '') {
      if (!(await closeOffice(database, office))) throw new Error(`there is no open office ${office}`);
      return 'The office is closed.';
    },
  },
};

/** How everything is called, a line each. */
export function howToCall(): string {
  const lines = Object.entries(COMMANDS).map(([name, { takes, does }]) => [
    `npm run hub -- ${[name, ...takes].join(' ')}`,
    does,
  ]);
  return [['npm run hub', 'serves the hub'], ...lines]
    .map(([call = '', does = '']) => `${call.padEnd(44)} ${does}`)
    .join('\n');
}

/** Writes what is made into a file that is not there yet. That it cannot be written is found out before anything is made. */
async function intoFile(file: string, make: () => Promise<object>): Promise<void> {
  const open = openSync(file, 'wx', 0o600);
  try {
    writeFileSync(open, `${JSON.stringify(await make(), null, 2)}\n`);
  } finally {
    closeSync(open);
  }
}
