import * as http from 'node:http';
import * as https from 'node:https';
import type { z } from 'zod';
import type { Event } from '../../core/hub/event.ts';
import type { HubLine } from '../../core/hub/exchange.ts';
import { type OfficeSaid, OfficesView } from '../../shared/farm.ts';
import { bearerOf } from '../hub/credentials.ts';
import { IdReply, type Invitation, PullReply, PushReply, RefusedReply } from '../hub/wire.ts';

/** The hub answered, and does not do what was asked. */
export class HubRefused extends Error {
  readonly code: RefusedReply['code'];
  constructor({ code, message }: RefusedReply) {
    super(message);
    this.code = code;
  }
}

/** A line to a hub that also learns the names of the farm's kiosks. */
export interface NamedLine extends HubLine {
  /** The offices the farm is told of, once something was said to one of them, where it is (`null`: nothing is). */
  offices(say: OfficeSaid | null): Promise<OfficesView>;
  close(): void;
}

/** What a line is opened with. */
export interface LineOptions {
  readonly invitation: Invitation;
  /** The kiosk that asks. */
  readonly kiosk: string;
  /** Hears the names of the kiosks of the farm, by kiosk. */
  readonly named: (kiosks: Readonly<Record<string, string>>) => void;
}

/** An answer that does not come within this is given up: the cable may have been cut without a word. */
const SILENCE_MS = 2000;
/** After a silence a hub that is there, but slow, is given twice as long each time, up to this. */
const LONGEST_SILENCE_MS = 16_000;
/** How long it has to say that it is there. */
const PING_MS = 1000;
/** No answer is larger; a hub that sends more is not ours. */
const MOST_ANSWERED = 16 * 1024 * 1024;

/** Opens a line to the hub of an invitation. Nothing is sent before it is asked. */
export function openHubLine({ invitation, kiosk, named }: LineOptions): NamedLine {
  const secure = invitation.hub.startsWith('https:');
  const agent = secure
    ? new https.Agent({ keepAlive: true, ...(invitation.ca === null ? {} : { ca: invitation.ca }) })
    : new http.Agent({ keepAlive: true });
  const headers = { 'content-type': 'application/json', authorization: bearerOf(invitation) };

  const send = (path: string, what: Pick<Sent, 'method' | 'body' | 'timeoutMs'>) =>
    request(secure ? https : http, new URL(path, invitation.hub), { agent, headers, ...what });
  let silenceMs = SILENCE_MS;

  async function ask<T>(path: string, body: unknown, form: z.ZodType<T>, waitMs = 0): Promise<T> {
    if (silenceMs > SILENCE_MS) await send('/v1/health', { method: 'GET', body: '', timeoutMs: PING_MS });
    const { status, text } = await send(path, {
      method: 'POST',
      body: JSON.stringify(body),
      timeoutMs: waitMs + silenceMs,
    }).catch((error: unknown) => {
      if (error instanceof NoAnswer) silenceMs = Math.min(LONGEST_SILENCE_MS, 2 * silenceMs);
      throw error;
    });
    silenceMs = SILENCE_MS;
    if (status === 200) return form.parse(JSON.parse(text));
    const refused = RefusedReply.safeParse(jsonIn(text));
    if (refused.success) throw new HubRefused(refused.data);
    throw new Error(`what answers at ${invitation.hub} is no hub (${status})`);
  }

  return {
    push: ({ events, ...batch }) => {
      const told = events.map(({ sequence, id, clock, kind, body }) => ({ sequence, id, clock, kind, body }));
      return ask('/v1/push', { ...batch, events: told }, PushReply);
    },
    async pull(have, waitMs) {
      const asked = { kiosk, have: Object.fromEntries(have), waitMs };
      const { events, heads, parted, kiosks } = await ask('/v1/pull', asked, PullReply, waitMs);
      named(kiosks);
      return { events: events satisfies Event[], heads: new Map(Object.entries(heads)), parted };
    },
    idAt: async (life, sequence) => (await ask('/v1/id', { life, sequence }, IdReply)).id,
    offices: (say) => ask('/v1/offices', { say }, OfficesView),
    close: () => agent.destroy(),
  };
}

class NoAnswer extends Error {}

interface Sent {
  readonly method: 'GET' | 'POST';
  readonly agent: http.Agent;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
  readonly timeoutMs: number;
}

function request(
  protocol: Pick<typeof http, 'request'>,
  url: URL,
  { method, agent, headers, body, timeoutMs }: Sent,
): Promise<{ status: number; text: string }> {
  return new Promise((resolve, reject) => {
    // A whole answer in time, not a byte now and then: a timer of the socket would start anew at each.
    const timer = setTimeout(() => asked.destroy(new NoAnswer('the hub does not answer')), timeoutMs);
    const asked = protocol.request(url, { method, agent, headers }, (response) => {
      const parts: Buffer[] = [];
      let bytes = 0;
      response.on('data', (part: Buffer) => {
        bytes += part.length;
        if (bytes > MOST_ANSWERED) asked.destroy(new Error('the hub answers with more than is taken'));
        parts.push(part);
        timer.refresh();
      });
      response.on('error', reject);
      response.on('end', () => {
        clearTimeout(timer);
        resolve({ status: response.statusCode ?? 0, text: Buffer.concat(parts).toString('utf8') });
      });
    });
    asked.on('error', (error) => {
      clearTimeout(timer);
      reject(error);
    });
    asked.end(body);
  });
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
