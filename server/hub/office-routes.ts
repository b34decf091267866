import type { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { LANGUAGE_NAMES } from '../../core/speech/language.ts';
import { ScreenLanguage } from '../../shared/language.ts';
import type { FarmRecords } from '../barn/barn-context.ts';
import type { PeriodQuery } from '../exports/period.ts';
import { textStream } from '../exports/text-stream.ts';
import { FARM_ROOMS, farmFile, farmPage, type OfficeFarm } from '../office/farm-pages.ts';
import { OFFICE_POLICY, type OfficeWay, officeNote, officePage, signInPage } from '../office/office-page.ts';
import { OFFICE_STYLE } from '../office/office-style.ts';
import { OFFICE_WORDS } from '../office/office-words.ts';
import { type OfficeResult, resultsOf } from '../office/test-results.ts';
import { testsPage } from '../office/tests-page.ts';
import { html } from '../print/html.ts';
import { printingIn } from '../print/printing.ts';
import { addSafetyHeaders } from '../security/safety-headers.ts';
import { FARM_NAME } from './credentials.ts';
import type { HubDatabase } from './database.ts';
import type { Doorkeeper } from './doorkeeper.ts';
import type { FarmCopies } from './farm-copies.ts';
import { askFarm, type FarmLetIn, farmFor } from './office-grants.ts';
import { cookieIn, languageCookie, languageOf } from './office-language.ts';
import { type Office, officeOf } from './offices.ts';

/** What the office of a hub is served with. */
export interface OfficeOptions {
  readonly database: HubDatabase;
  readonly copies: FarmCopies;
  readonly doorkeeper: Doorkeeper;
  /** Whether the hub is served over TLS itself. */
  readonly secure: boolean;
}

const COOKIE = 'byreside-office';
/** Whoever has not entered yet may ask for these. */
const OPEN = ['/office/office.css', '/office/session', '/office/sign-in', '/office/language/:language'];
/** The farm that an office asks to be let in by. */
const Asked = z.object({ farm: z.string().trim().regex(FARM_NAME) });

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
    reply.header('content-security-policy', OFFICE_POLICY).header('cache-control', 'no-store');
    addSafetyHeaders(reply);
    const site = request.headers['sec-fetch-site'];
    if (request.method !== 'GET' && site !== undefined && site !== 'same-origin')
      return reply.code(403).send('Requests from other sites are not taken.');
    const key = cookieIn(request.headers.cookie, COOKIE);
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
  app.get('/sign-in', async ({ headers }, reply) => page(reply).send(signInPage(writtenFor(headers), false)));
  app.get<{ Params: { language: string } }>('/language/:language', async ({ params }, reply) => {
    const language = ScreenLanguage.safeParse(params.language).data ?? 'en';
    return reply.header('set-cookie', languageCookie(language)).redirect('/office', 303);
  });
  app.post<{ Body: Record<string, string> | null }>('/session', async (request, reply) => {
    const key = request.body?.['key']?.trim() ?? '';
    const office = await officeOf(database, key);
    if (office === null) {
      doorkeeper.turnedAway(request.ip);
      return page(reply)
        .code(401)
        .send(signInPage(writtenFor(request.headers), true));
    }
    return reply.header('set-cookie', cookieOf(key, secure)).redirect('/office', 303);
  });
  app.post('/leave', async (_, reply) =>
    reply.header('set-cookie', `${cookieOf('', secure)}; Max-Age=0`).redirect('/office/sign-in', 303),
  );

  app.get('/', async (request, reply) => {
    const office = officeAsking(request);
    const { words, frame } = writtenFor(request.headers);
    const farms = await lettingIn(office);
    const links = farms.map(
      ({ farm, area }) =>
        html`<tr><th><a href="/office/farms/${farm}/board">${farm}</a></th><td>${area ?? words.tests.noArea}</td></tr>`,
    );
    const list =
      farms.length === 0
        ? html`<p>${words.nothingLetIn}</p>`
        : html`<table><thead><tr><th>${words.tests.farm}</th><th>${words.tests.area}</th></tr></thead><tbody>${links}</tbody></table>`;
    const ask = html`<h2>${words.ask.title}</h2><form method="post" action="/office/ask"><label>${words.ask.farm}<input name="farm" required pattern="[a-z0-9\-]{1,64}" maxlength="64" autocomplete="off"></label><button type="submit">${words.ask.send}</button></form>`;
    const leave = html`<form method="post" action="/office/leave"><button type="submit">${words.signIn.leave}</button></form>`;
    const found = frame(words.farms, [{ href: '/office/tests', name: words.allTests }], office.name);
    return page(reply).send(textStream(officePage(found, [list.html, ask.html, leave.html])));
  });

  app.post('/ask', async (request, reply) => {
    const asked = Asked.safeParse(request.body);
    if (asked.success) await askFarm(database, asked.data.farm, officeAsking(request));
    return reply.redirect(asked.success ? `/office/asked/${asked.data.farm}` : '/office/asked', 303);
  });
  app.get<{ Params: { farm?: string } }>('/asked/:farm?', async ({ headers, params }, reply) => {
    const { words, frame } = writtenFor(headers);
    const { farm } = Asked.safeParse(params).data ?? {};
    const sentence = farm === undefined ? words.ask.noName : words.ask.asked(farm);
    return page(reply).send(
      officeNote(frame(words.ask.title, [{ href: '/office', name: words.farms }]), sentence),
    );
  });

  app.get('/tests', async (request, reply) => {
    const office = officeAsking(request);
    const { language, words, frame } = writtenFor(request.headers);
    const results: OfficeResult[] = [];
    for (const { farm, ...known } of await lettingIn(office))
      results.push(
        ...(await copies.read(farm, zoned(known), (records) =>
          resultsOf(records, { farm, area: known.area }),
        )),
      );
    const found = frame(words.allTests, [{ href: '/office', name: words.farms }], office.name);
    return page(reply).send(
      textStream(officePage(found, testsPage(results, true, words, printingIn(language, 'UTC')))),
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
    const { language, words, frame } = writtenFor(request.headers);
    const ways = [{ href: '/office', name: words.farms }];
    if (known === null)
      return page(reply)
        .code(404)
        .send(officeNote(frame(words.office, ways), words.noFarm));
    const at = `/office/farms/${farm}`;
    return copies.read(farm, zoned(known), (records) =>
      answer({
        records: inLanguage(records, language),
        name: farm,
        area: known.area,
        pagesAt: at,
        filesAt: `${at}/files`,
        ways,
      }),
    );
  }

  for (const room of FARM_ROOMS)
    app.get<{ Params: { farm: string }; Querystring: PeriodQuery }>(
      `/farms/:farm/${room}`,
      async (request, reply) =>
        withFarm(request, reply, request.params.farm, async (farm) => {
          const found = farmPage(farm, room, request.query);
          if (!('why' in found)) return sent(page(reply), found);
          const { words, frame } = writtenFor(request.headers);
          return page(reply)
            .code(400)
            .send(officeNote(frame(words.rooms[room], farm.ways), found.why));
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

/** What the pages of a browser are written with. */
function writtenFor(headers: FastifyRequest['headers']) {
  const language = languageOf(headers);
  const words = OFFICE_WORDS[language];
  const others = ScreenLanguage.options.filter((each) => each !== language);
  const inOthers = others.map((each) => ({ href: `/office/language/${each}`, name: LANGUAGE_NAMES[each] }));
  return {
    language,
    words,
    frame: (title: string, ways: readonly OfficeWay[], under = '') => ({
      language,
      title,
      under,
      ways: [...ways, ...inOthers],
    }),
  };
}

/** The records of a farm, shown in a language. */
function inLanguage(records: FarmRecords, language: ScreenLanguage): FarmRecords {
  const { memory } = records;
  return { ...records, memory: { ...memory, settings: { ...memory.settings, language } } };
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

function cookieOf(key: string, secure: boolean): string {
  return `${COOKIE}=${key}; Path=/office; HttpOnly; SameSite=Strict${secure ? '; Secure' : ''}`;
}
