import type { OpenPort } from '../serial/connection.ts';
import { withEvenParity } from '../serial/seven-bits.ts';
import type { Timers } from '../serial/timers.ts';
import type { ScaleProfile } from './profile.ts';
import { type SmaAbout, type SmaDialogue, smaDialogueHeard, startSmaDialogue } from './sma-about.ts';

/** What asking a scale about itself needs. */
export interface AskAboutOptions {
  readonly path: string;
  readonly baud: number;
  readonly profile: ScaleProfile;
  /** Whether the line is of seven bits and even parity. */
  readonly sevenBits: boolean;
  readonly openPort: OpenPort;
  readonly timers: Timers;
  /** Ends it early: what was learned so far is told. */
  readonly signal?: AbortSignal;
}

/** Dropped after opening: adapters send rubbish, and a question may still be unanswered. */
const SETTLE_MS = 150;
/** A line that has not come within this is not coming. */
const LINE_MS = 400;
/** A dialogue that has not ended within this is given up: something else is talking. */
const DIALOGUE_MS = 1500;

/**
 * Asks a scale of the polled protocol what it is, what it carries and in which steps it counts.
 *
 * Both dialogues only read. The port must be free, and is free again at the end. A scale that answers nothing, or
 * stops half-way, leaves the rest unknown. Rejects with `OpenFailure`. Takes at most 4 s.
 */
export async function askAbout(options: AskAboutOptions): Promise<SmaAbout> {
  const { profile, timers, sevenBits, signal } = options;
  const port = await options.openPort(options.path, options.baud);
  try {
    await sleep(timers, SETTLE_MS);
    let { about } = startSmaDialogue('about');
    for (const which of ['about', 'information'] as const) {
      let dialogue: SmaDialogue = startSmaDialogue(which, about);
      const until = timers.now() + DIALOGUE_MS;
      while (dialogue.ask !== null && timers.now() < until && signal?.aborted !== true) {
        const asked = dialogue.ask;
        const text = await nextLine(asked);
        if (text === null) break;
        dialogue = smaDialogueHeard(dialogue, text);
      }
      about = dialogue.about;
    }
    return about;
  } finally {
    await port.close();
  }

  /** The first whole line after a question, or `null` where none came in time. */
  function nextLine(asked: Uint8Array): Promise<string | null> {
    const framer = profile.createFramer();
    return new Promise((resolve) => {
      const timer = timers.set(() => done(null), LINE_MS);
      function done(text: string | null): void {
        timers.clear(timer);
        port.onData(() => {});
        resolve(text);
      }
      port.onData((chunk) => {
        const line = framer.push(chunk).find((framed) => framed.kind === 'line');
        if (line !== undefined) done(line.text);
      });
      port.write(sevenBits ? withEvenParity(asked) : asked);
    });
  }
}

function sleep(timers: Timers, ms: number): Promise<void> {
  return new Promise((resolve) => {
    timers.set(() => resolve(), ms);
  });
}
