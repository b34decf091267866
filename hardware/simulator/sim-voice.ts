import type { Mass } from '../../core/quantity/mass.ts';
import { BracketFramer } from '../serial/bracket-framer.ts';
import { LineSplitter } from '../serial/line-splitter.ts';
import { encodeBlankUnit } from './encode-blank-unit.ts';
import { encodeCommandSet } from './encode-command-set.ts';
import { encodeHeaderComma } from './encode-header-comma.ts';
import { encodeStGs } from './encode-st-gs.ts';
import { encodeStabilityLine } from './encode-stability-line.ts';
import { encodeStatusWords } from './encode-status-words.ts';
import { encodeStxEtxLong, encodeStxEtxShort } from './encode-stx-etx.ts';
import { encodeStxWeight } from './encode-stx-weight.ts';
import { encodeValueUnit } from './encode-value-unit.ts';
import { encodeWeightStatus, invertStatus } from './encode-weight-status.ts';
import type { Face, Indication } from './indication.ts';
import { listenToSma } from './sma-ear.ts';

/** What a voice may do with the scale it belongs to. */
export interface SimScaleBody {
  readonly face: Face;
  readonly capacity: Mass;
  shown(): Indication;
  /** The tare taken off, as the scale would show it. */
  tare(): Indication;
  /** Presses a button; false where the scale refuses, as zero in motion. */
  press(button: 'tare' | 'clear' | 'zero'): boolean;
}

/** Makes a reply when its time has come. */
export type Reply = () => Uint8Array;

/** How a simulated scale speaks. */
export interface SimVoice {
  /** What it sends by itself ten times a second; `null` for a scale that must be asked. */
  readonly stream: ((shown: Indication, face: Face) => Uint8Array) | null;
  /** Takes what arrives on one connection and gives the replies it calls for; `null` for a deaf scale. */
  readonly listen: ((body: SimScaleBody) => (chunk: Uint8Array) => Reply[]) | null;
}

function streaming(stream: SimVoice['stream']): SimVoice {
  return { stream, listen: null };
}

type Words = Readonly<Record<string, (body: SimScaleBody) => Uint8Array>>;

/** Answers whole words, and `unknown` to any other. */
function answering(cut: () => (chunk: Uint8Array) => string[], words: Words, unknown: string): SimVoice {
  return {
    stream: null,
    listen: (body) => {
      const hear = cut();
      return (chunk) => hear(chunk).map((word) => replyTo(word, body, words, unknown));
    },
  };
}

function replyTo(word: string, body: SimScaleBody, words: Words, unknown: string): Reply {
  const answer = Object.hasOwn(words, word) ? words[word] : undefined;
  return () => answer?.(body) ?? Buffer.from(unknown, 'latin1');
}

/** Words that end with CR; a LF before one is passed over. */
function untilCr(): (chunk: Uint8Array) => string[] {
  let held = '';
  return (chunk) => {
    const words = (held + Buffer.from(chunk).toString('latin1')).split('\r');
    held = (words.pop() ?? '').slice(-32);
    return words.map((word) => word.replace(/^\n/, ''));
  };
}

function untilCrLf(): (chunk: Uint8Array) => string[] {
  const splitter = new LineSplitter({ maxLength: 32, synchronised: true });
  return (chunk) => splitter.push(chunk).flatMap((one) => (one.kind === 'line' ? [one.text] : []));
}

function eachByte(): (chunk: Uint8Array) => string[] {
  return (chunk) => [...Buffer.from(chunk).toString('latin1')].filter((character) => character > ' ');
}

function done(button: 'tare' | 'clear' | 'zero', yes: string, no: string) {
  return (body: SimScaleBody) => Buffer.from(`${body.press(button) ? yes : no}\r\n`, 'latin1');
}

function weightStatusVoice(encode: (shown: Indication, face: Face) => Uint8Array): SimVoice {
  const weigh = ({ shown, face }: SimScaleBody) => encode(shown(), face);
  const zero = (body: SimScaleBody) => {
    body.press('zero');
    return weigh(body);
  };
  return answering(untilCr, { W: weigh, Z: zero }, '\n?\r\x03');
}

const COMMAND_SET_WORDS: Words = {
  S: ({ shown, face }) => encodeCommandSet(shown(), face),
  SI: ({ shown, face }) => encodeCommandSet(shown(), face),
  Z: done('zero', 'Z A', 'Z I'),
  T: done('tare', 'T S', 'T I'),
  TAC: done('clear', 'TAC A', 'TAC I'),
};

/** The formats a simulated scale speaks, by profile id. */
export const SIM_VOICES = {
  sma: {
    stream: null,
    listen: (body: SimScaleBody) => {
      const framer = new BracketFramer({ begin: 0x0a, end: 0x0d, maxFrame: 64 });
      const answer = listenToSma(body);
      return (chunk: Uint8Array) =>
        framer.push(chunk).flatMap((one) => (one.kind === 'line' ? [answer(one.text)] : []));
    },
  },
  'st-gs': streaming((shown, face) => encodeStGs(shown, face, 'B')),
  'weight-status': weightStatusVoice((shown, face) => encodeWeightStatus(shown, face, 'A')),
  'weight-status-inverse': weightStatusVoice((shown, face) =>
    invertStatus(encodeWeightStatus(shown, face, 'C')),
  ),
  'stx-weight': answering(eachByte, { W: ({ shown, face }) => encodeStxWeight(shown(), face) }, '\x02?x\r'),
  'header-comma': streaming(encodeHeaderComma),
  'value-unit': streaming(encodeValueUnit),
  'stability-line': answering(
    untilCrLf,
    {
      SI: ({ shown, face }) => encodeStabilityLine(shown(), face),
      Z: done('zero', 'Z A', 'Z I'),
      T: done('tare', 'T A', 'T I'),
    },
    'ES\r\n',
  ),
  'blank-unit': streaming(encodeBlankUnit),
  'stx-etx-short': streaming(encodeStxEtxShort),
  'stx-etx-long': streaming(encodeStxEtxLong),
  's-si': answering(untilCrLf, COMMAND_SET_WORDS, 'ES\r\n'),
  'status-words': streaming(encodeStatusWords),
} as const satisfies Readonly<Record<string, SimVoice>>;

/** The id of a format a simulated scale speaks. */
export type SimFormat = keyof typeof SIM_VOICES;

/** Their ids in a list. */
export const SIM_FORMATS = Object.keys(SIM_VOICES) as readonly SimFormat[];
