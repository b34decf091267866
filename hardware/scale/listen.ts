import type { Connection, OpenPort } from '../serial/connection.ts';
import { withEvenParity } from '../serial/seven-bits.ts';
import type { Timers } from '../serial/timers.ts';
import { plainBytes } from './plain-lines.ts';
import { wire } from './profile.ts';
import { type Capture, type Proposal, proposalsFor } from './recognise.ts';

/** The speeds tried, the usual one first. */
export const RECOGNISED_BAUDS: readonly number[] = [9600, 4800, 2400, 19_200, 38_400, 115_200, 1200];

const PLAIN: readonly Uint8Array[] = ['\nW\r', 'W\r', 'W', 'SI\r\n'].map(wire);

/**
 * Questions for a weight, for eight bits and then for seven with parity, which to a scale of eight is rubbish.
 *
 * None of them changes anything in a scale of any format known here.
 */
export const QUESTIONS: readonly Uint8Array[] = [...PLAIN, ...PLAIN.map(withEvenParity)];

/** Dropped after opening: adapters send rubbish, and buffers hold old lines. */
const SETTLE_MS = 150;
/** Long enough for several lines of a scale that sends twice a second. */
const LISTEN_MS = 1600;
const ANSWER_MS = 250;
/** How often a question is asked that was answered, and how often in any case. */
const ASK_TIMES = 4;
const LEAST_TIMES = 2;
/** From here on the other speeds are left alone. */
const SURE = 0.5;
/** A stream of which this share is whole lines of plain text, their endings apart, was heard as it was sent. */
const PLAIN_SHARE = 0.5;
/** More than any format sends in the time; a line gone mad is cut off here. */
const MOST_BYTES = 32_768;

/** What recognition needs. */
export interface RecogniseOptions {
  readonly path: string;
  readonly openPort: OpenPort;
  readonly timers: Timers;
  readonly bauds?: readonly number[];
  /** Called before each try, for the screen. */
  readonly onStep?: (baud: number, asking: boolean) => void;
  /** Called with what came unasked at each speed. */
  readonly onHeard?: (baud: number, bytes: Uint8Array) => void;
  /** Ends it early: what was found so far is proposed. */
  readonly signal?: AbortSignal;
}

/**
 * Listens to whatever is plugged in at each speed, asks for a weight where it stays silent, and proposes formats.
 *
 * Best first; empty where nothing that is known speaks. The port must be free, and is free again at the end. Rejects
 * with `OpenFailure`. Takes two seconds where a scale sends by itself, at worst three quarters of a minute.
 */
export async function recogniseScale(options: RecogniseOptions): Promise<Proposal[]> {
  const { bauds = RECOGNISED_BAUDS } = options;
  const captures: Capture[] = [];
  for (const asking of [false, true]) {
    for (const baud of bauds) {
      if (options.signal?.aborted === true) return proposalsFor(captures);
      options.onStep?.(baud, asking);
      captures.push(...(await tryBaud(options, baud, asking)));
      const found = proposalsFor(captures);
      if ((found[0]?.confidence ?? 0) >= SURE) return found;
      // What sends whole lines by itself is heard at its own speed: neither another speed nor a question adds to that.
      if (found.length === 0 && captures.some(isPlain)) return found;
    }
  }
  return proposalsFor(captures);
}

function isPlain({ bytes }: Capture): boolean {
  return bytes.length > 0 && plainBytes(bytes) >= PLAIN_SHARE * bytes.length;
}

async function tryBaud(options: RecogniseOptions, baud: number, asking: boolean): Promise<Capture[]> {
  const port = await options.openPort(options.path, baud);
  try {
    await sleep(options.timers, SETTLE_MS);
    if (!asking) {
      const bytes = await hear(port, options.timers, LISTEN_MS);
      options.onHeard?.(baud, bytes);
      return [{ baud, asked: null, bytes }];
    }
    const captures: Capture[] = [];
    for (const asked of QUESTIONS) {
      if (options.signal?.aborted === true) break;
      captures.push(...(await ask(port, options.timers, { baud, asked })));
    }
    return captures;
  } finally {
    await port.close();
  }
}

/**
 * Asks twice, and a few times more if there is an answer in a format known here; an echo is none.
 *
 * The rest of another question may spoil the first asking: its end then only clears the scale's ear.
 */
async function ask(port: Connection, timers: Timers, what: Omit<Capture, 'bytes'>): Promise<Capture[]> {
  const question = what.asked ?? new Uint8Array(0);
  const answers: Uint8Array[] = [];
  for (let time = 0; time < ASK_TIMES; time += 1) {
    const answer = hear(port, timers, ANSWER_MS);
    port.write(question);
    answers.push(await answer);
    if (time + 1 < LEAST_TIMES) continue;
    if (proposalsFor([{ ...what, bytes: Buffer.concat(answers) }]).length === 0) break;
  }
  return [{ ...what, bytes: Buffer.concat(answers) }];
}

async function hear(port: Connection, timers: Timers, forMs: number): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let count = 0;
  port.onData((chunk) => {
    if (count >= MOST_BYTES) return;
    chunks.push(chunk.slice());
    count += chunk.length;
  });
  await sleep(timers, forMs);
  port.onData(() => {});
  return Buffer.concat(chunks);
}

function sleep(timers: Timers, ms: number): Promise<void> {
  return new Promise((resolve) => {
    timers.set(() => resolve(), ms);
  });
}
