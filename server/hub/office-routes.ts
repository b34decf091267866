import type { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { PeriodQuery } from '../exports/period.ts';
import { textStream } from '../exports/text-stream.ts';
import { FARM_ROOMS, farmFile, farmPage, type OfficeFarm } from '../office/farm-pages.ts';
import { OFFICE_POLICY, officeNote, officePage, signInPage } from '../office/office-page.ts';
import { OFFICE_STYLE } from '../office/office-style.ts';
import { OFFICE_WORDS } from '../office/office-words.ts';
import { type OfficeResult, resultsOf } from '../office/test-results.ts';
import { testsPage } from '../office/tests-page.ts';
import { html } from '../print/html.ts';
import { printingIn } from '../print/printing.ts';
import type { HubDatabase } from './database.ts';
import type { Doorkeeper } from './doorkeeper.ts';
import type { FarmCopies } from './farm-copies.ts';
import { type FarmLetIn, farmFor, type Office, officeOf } from './offices.ts';

/** What the office of a hub is served with. */
export interface OfficeOptions {
  readonly database: HubDatabase;
  readonly copies: FarmCopies;
  readonly doorkeeper: Doorkeeper;
  /** Whether the hub is served over TLS itself. */
  readonly secure: boolean;
}

const COOKIE = 'byreside-office';
const LANGUAGE = 'en';
const WORDS = OFFICE_WORDS[LANGUAGE];
/** Whoever has not entered yet may ask for these. */
const OPEN = ['/office/office.css', '/office/session', '/office/sign-in'];

/** The office of a hub: the farms that let whoever asks in, each as a kiosk of it would show it, and what worked on all. */
export function addOfficeRoutes(hub: FastifyInstance, options: OfficeOptions): void {
  void hub.register(
    (app, _, done) => {
      addRoutes(app, options);
      done();
    },
    { prefix: '/office' },
  );
}

function addRoutes(app: FastifyInstance, { database, copies, doorkeeper, secure }: OfficeOptions): void {
  const offices = new WeakMap<FastifyRequest, Office>();
  app.addContentTypeParser(
    'application/x-www-form-urlencoded',
    { parseAs: 'string', bodyLimit: 1024 },
    (_, body, done) => done(null, Object.fromEntries(new URLSearchParams(String(body)))),
  );
  app.addHook('onRequest', async (request, reply) => {
    reply.header('content-security-policy', OFFICE_POLICY);
    reply.header('x-content-type-options', 'nosniff').header('referrer-policy', 'no-referrer');
    reply.header('cache-control', 'no-store');
    const site = request.headers['sec-fetch-site'];
    if (request.method !== 'GET' && site !== undefined && site !== 'same-origin')
      return reply.code(403).send('Requests from other sites are not taken.');
    const key = cookieIn(request.headers.cookie);
    const office = key === null ? null : await officeOf(database, key);
    if (office !== null) offices.set(request, office);
    else {
      if (key !== null) doorkeeper.turnedAway(request.ip);
      if (!doorkeeper.mayAsk(request.ip, null)) return reply.code(429).send('Too many requests. Wait.');
      if (!OPEN.includes(request.routeOptions.url ?? '')) return reply.redirect('/office/sign-in');
    }
    return undefined;
  });
  const officeAsking = (request: FastifyRequest): Office => {
    const office = offices.get(request);
    if (office === undefined) throw new Error('nobody asks for this page');
    return office;
  };

  app.get('/office.css', async (_, reply) => reply.type('text/css; charset=utf-8').send(OFFICE_STYLE));
  app.get('/sign-in', async (_, reply) => page(reply).send(signInPage(WORDS, LANGUAGE, false)));
  app.post<{ Body: Record<string, string> | null }>('/session', async (request, reply) => {
    const key = request.body?.['key']?.trim() ?? '';
    const office = await officeOf(database, key);
    if (office === null) {
      doorkeeper.turnedAway(request.ip);
      return page(reply)
        .code(401)
        .send(signInPage(WORDS, LANGUAGE, true));
    }
    return reply.header('set-cookie', cookieOf(key, secure)).redirect('/office', 303);
  });
  app.post('/leave', async (_, reply) =>
    reply.header('set-cookie', `${cookieOf('', secure)}; Max-Age=0`).redirect('/office/sign-in', 303),
  );

  app.get('/', async (request, reply) => {
    const office = officeAsking(request);
    const farms = await lettingIn(office);
    const links = farms.map(
      ({ farm, area }) =>
        html`<tr><th><a href="/office/farms/${farm}/board">${farm}</a></th><td>${area ?? WORDS.tests.noArea}</td></tr>`,
    );
    const list =
      farms.length === 0
        ? html`<p>${WORDS.nothingLetIn}</p>`
        : html`<table><thead><tr><th>${WORDS.tests.farm}</th><th>${WORDS.tests.area}</th></tr></thead><tbody>${links}</tbody></table>`;
    const leave = html`<form method="post" action="/office/leave"><button type="submit">${WORDS.signIn.leave}</button></form>`;
    const ways = [{ href: '/office/tests', name: WORDS.allTests }];
    const frame = { language: LANGUAGE, title: WORDS.farms, under: office.name, ways };
    return page(reply).send(textStream(officePage(frame, [list.html, leave.html])));
  });

  app.get('/tests', async (request, reply) => {
    const office = officeAsking(request);
    const results: OfficeResult[] = [];
    for (const { farm, ...known } of await lettingIn(office))
      results.push(
        ...(await copies.read(farm, zoned(known), (records) =>
          resultsOf(records, { farm, area: known.area }),
        )),
      );
    const frame = {
      language: LANGUAGE,
      title: WORDS.allTests,
      under: office.name,
      ways: [{ href: '/office', name: WORDS.farms }],
    };
    return page(reply).send(
      textStream(officePage(frame, testsPage(results, true, WORDS, printingIn(LANGUAGE, 'UTC')))),
    );
  });

  /** Does something with a farm that lets whoever asks in; says that there is no such page where it does not. */
  async function withFarm(
    request: FastifyRequest,
    reply: FastifyReply,
    farm: string,
    answer: (of: OfficeFarm) => unknown,
  ): Promise<unknown> {
    const known = await farmFor(database, farm, officeAsking(request).office);
    if (known === null) {
      const frame = {
        language: LANGUAGE,
        title: WORDS.office,
        ways: [{ href: '/office', name: WORDS.farms }],
      };
      return page(reply).code(404).send(officeNote(frame, WORDS.noFarm));
    }
    const at = `/office/farms/${farm}`;
    const ways = [{ href: '/office', name: WORDS.farms }];
    return copies.read(farm, zoned(known), (records) =>
      answer({ records, name: farm, area: known.area, pagesAt: at, filesAt: `${at}/files`, ways }),
    );
  }

  for (const room of FARM_ROOMS)
    app.get<{ Params: { farm: string }; Querystring: PeriodQuery }>(
      `/farms/:farm/${room}`,
      async (request, reply) =>
        withFarm(request, reply, request.params.farm, async (farm) => {
          const found = farmPage(farm, room, request.query);
          if (!('why' in found)) return sent(page(reply), found);
          return page(reply)
            .code(400)
            .send(officeNote({ language: LANGUAGE, title: WORDS.rooms[room], ways: farm.ways }, found.why));
        }),
    );
  app.get<{ Params: { farm: string; file: string }; Querystring: PeriodQuery }>(
    '/farms/:farm/files/:file',
    async (request, reply) =>
      withFarm(request, reply, request.params.farm, async (farm) => {
        const found = farmFile(farm, request.params.file, request.query);
        if (!found.ok) return reply.code(found.status).send({ message: found.why });
        reply.type(found.type).header('content-disposition', `attachment; filename="${found.fileName}"`);
        return sent(reply, found.pieces);
      }),
  );

  /** The farms that let an office in now. */
  async function lettingIn({ office, farms }: Office): Promise<(FarmLetIn & { readonly farm: string })[]> {
    const found: (FarmLetIn & { readonly farm: string })[] = [];
    for (const farm of farms) {
      const known = await farmFor(database, farm, office);
      if (known !== null) found.push({ farm, ...known });
    }
    return found;
  }
}

const zoned = ({ head, timeZone }: FarmLetIn) => ({ head, timeZone: timeZone ?? 'UTC' });

const page = (reply: FastifyReply) => reply.type('text/html; charset=utf-8');

/** Sends a page or file, and is done when all of it was read: the farm's copy must not be closed before. */
async function sent(reply: FastifyReply, pieces: Iterable<string>): Promise<FastifyReply> {
  const stream: Readable = textStream(pieces);
  const over = new Promise<void>((resolve) => stream.once('close', resolve));
  void reply.send(stream);
  await over;
  return reply;
}

function cookieIn(header: string | undefined): string | null {
  const found = new RegExp(`(?:^|; )${COOKIE}=([\\w.-]{1,200})(?:;|$)`).exec(header ?? '');
  return found?.[1] ?? null;
}

function cookieOf(key: string, secure: boolean): string {
  return `${COOKIE}=${key}; Path=/office; HttpOnly; SameSite=Strict${secure ? '; Secure' : ''}`;
}
