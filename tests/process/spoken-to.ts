import WebSocket from 'ws';
import { EAR_RATE } from '../../hardware/ear/pcm.ts';
import { seededRandom } from '../../hardware/simulator/random.ts';
import { ServerMessage } from '../../shared/message.ts';
import { noiseAtLevel, pcm, speechAtLevel } from '../bench/voice/mix.ts';
import { SPEAKERS, speak } from '../bench/voice/speakers.ts';
import { monoSamples, readWave } from '../bench/voice/wave.ts';

/** How much louder than the noise of the barn its keeper speaks, in dB. */
const SNR_DB = 10;
const FRAME_MS = 50;
const FRAME = (EAR_RATE * FRAME_MS) / 1000;

/** A page of the kiosk's own machine with a microphone in a barn, and a keeper before it who never touches it. */
export interface SpokenTo {
  /** What the page was asked to do by voice. */
  readonly wishes: readonly string[];
  /** What the kiosk said aloud, in order. */
  readonly said: readonly string[];
  /** Holds the key to talk, or lets it go. */
  talk(on: boolean): void;
  /** Says something into the microphone; resolves when the last of it was sent. */
  say(text: string, speaker?: number): Promise<void>;
  close(): void;
}

/**
 * Opens a page whose microphone sends its sound in real time. What the kiosk says is told to be over when it is, so
 * that its ear opens again; with `ownVoice` it is heard by the microphone too, as loud as the keeper.
 */
export async function openPage(base: string, { ownVoice = false } = {}): Promise<SpokenTo> {
  const socket = new WebSocket(base.replace('http', 'ws').concat('/ws'), { origin: base });
  await new Promise((resolve, reject) => socket.once('open', resolve).once('error', reject));
  const noise = noiseAtLevel('pink', SNR_DB, 20 * EAR_RATE, seededRandom(11));
  const said: string[] = [];
  const wishes: string[] = [];
  /** Sounds still to be heard by the microphone, each with where it has come to. */
  let sounding: { readonly samples: Float64Array; at: number; readonly over: () => void }[] = [];
  let frames = 0;
  const began = performance.now();

  const send = (message: object) => socket.send(JSON.stringify(message));
  const play = (samples: Float64Array) =>
    new Promise<void>((over) => sounding.push({ samples, at: 0, over }));

  function frame(): Int16Array {
    const samples = Float64Array.from(
      { length: FRAME },
      (_, i) => noise[(frames * FRAME + i) % noise.length] ?? 0,
    );
    for (const one of sounding) {
      for (let i = 0; i < FRAME && one.at < one.samples.length; i += 1, one.at += 1) {
        samples[i] = (samples[i] ?? 0) + (one.samples[one.at] ?? 0);
      }
    }
    for (const one of sounding) if (one.at >= one.samples.length) one.over();
    sounding = sounding.filter(({ at, samples: all }) => at < all.length);
    return pcm(samples);
  }

  const hearing = setInterval(() => {
    while (frames * FRAME_MS < performance.now() - began) {
      socket.send(Buffer.from(frame().buffer));
      frames += 1;
    }
  }, FRAME_MS);

  socket.on('message', async (raw) => {
    const message = ServerMessage.parse(JSON.parse(String(raw)));
    if (message.type === 'spoken-wish') wishes.push(JSON.stringify(message.wish));
    if (message.type !== 'say') return;
    said.push(message.text);
    if (ownVoice && message.wav !== null) {
      const sound = await (await fetch(`${base}${message.wav}`)).arrayBuffer();
      await play(speechAtLevel(monoSamples(readWave(Buffer.from(sound)))));
    }
    if (socket.readyState === WebSocket.OPEN) send({ type: 'said', id: message.id, how: 'ended' });
  });

  send({ type: 'loudspeaker', can: true, words: false });
  send({ type: 'microphone', rate: EAR_RATE, channels: 1 });
  return {
    wishes,
    said,
    talk: (on) => send({ type: 'talk', on }),
    async say(text, speaker = 0) {
      const voice = SPEAKERS[speaker];
      if (voice === undefined) throw new Error('no such speaker');
      await play(speechAtLevel(speak(voice, text)));
    },
    close() {
      clearInterval(hearing);
      socket.terminate();
    },
  };
}
