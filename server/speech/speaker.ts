import type { Earcon } from '../../core/speech/earcon.ts';
import { earconMs } from '../../core/speech/earcon.ts';
import { type SayMemory, sayChanges } from '../../core/speech/say-changes.ts';
import type { Queued, QueueEvent, SayQueue } from '../../core/speech/say-queue.ts';
import { reduceQueue, SILENT } from '../../core/speech/say-queue.ts';
import { REFUSED_ALOUD, type RefusedAloud, type Saying } from '../../core/speech/saying.ts';
import type { SayKey } from '../../core/speech/utterance.ts';
import { type Priority, type Utterance, utter } from '../../core/speech/utterance.ts';
import type { Mouth } from '../../hardware/mouth/mouth.ts';
import { voiceFor } from '../../hardware/mouth/voices.ts';
import type { Wav } from '../../hardware/mouth/wav.ts';
import type { TimerHandle, Timers } from '../../hardware/serial/timers.ts';
import type { Answer, Intent } from '../../shared/intent.ts';
import type { VoiceView } from '../../shared/voice.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { Outlet } from './outlet.ts';
import { sceneNow } from './scene-now.ts';
import { voiceView } from './voice-view.ts';

/** Sound goes on this long after its end was told or reckoned: the way to the loudspeaker, and the echo of a barn. */
const TAIL_MS = 250;
/** A page that does not tell the end of an utterance is waited for this much longer than the utterance lasts. */
const GRACE_MS = 1500;
/** How long a browser takes for a letter and a pause, where nothing but the text is known; on the long side. */
const LETTER_MS = 110;
/** How long the sound of a line may take to be made: until it is there, it may begin at any moment. */
const RENDERS_WITHIN_MS = 3000;

const WORTH_SAYING_AGAIN: readonly Priority[] = ['important', 'urgent'];

/** What the kiosk says, from the change that asks for it to the sound. */
export interface Speaker {
  /** Looks what changed in the barn, and says what there is to say about it. */
  look(): void;
  /** Hears how an intent was answered: some refusals are said. */
  answered(intent: Intent, answer: Answer): void;
  /** Says something that does not follow from the state of the work. */
  say(saying: Saying): void;
  /** Says the last important thing again, unless it no longer holds; whether there was one. */
  sayAgain(): boolean;
  /** Whether what it says would be heard. */
  audible(): boolean;
  /** Says a dose, or sounds an earcon, to be judged. */
  tryVoice(earcon: Earcon | null): void;
  /** How the voice stands, as the wire carries it. */
  view(): VoiceView;
  /**
   * Uptime in milliseconds until which something of the kiosk's own may be heard, or `null` in silence: what the ear
   * hears before then is worth nothing.
   */
  soundingUntil(): number | null;
  /** The sound of an utterance that is being said. */
  wav(id: number): Wav | null;
  stop(): void;
}

/** What a speaker is made of. */
export interface SpeakerOptions {
  readonly barn: BarnContext;
  readonly timers: Timers;
  /** The kiosk's own engine; `null` where it is not installed. */
  readonly mouth: Mouth | null;
  readonly outlet: Outlet;
  /** Called whenever what `view` tells has changed. */
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
}

/** Makes the speaker of a barn. It says nothing of how the barn stands at the first look. */
export function createSpeaker({ barn, timers, mouth, outlet, changed, log }: SpeakerOptions): Speaker {
  let memory: SayMemory | null = null;
  let queue: SayQueue = SILENT;
  let wavs: readonly { readonly id: number; readonly wav: Wav }[] = [];
  let until: number | null = null;
  let ending: TimerHandle | null = null;
  let important: Utterance | null = null;

  const now = () => barn.clock.now().uptimeMs;
  const settings = () => barn.memory.settings.voice;
  const voicing = () => {
    const { language, voice, rate } = settings();
    return { voice: voiceFor(voice, language).id, rate };
  };
  /** Whether a word could be heard at all; else it is not even queued. */
  const audible = () => !settings().muted && outlet.heard(mouth !== null) === 'heard';

  function take(event: QueueEvent): void {
    const before = queue.speaking;
    queue = reduceQueue(queue, event, now());
    if (queue.speaking?.number === before?.number) return;
    if (ending !== null) timers.clear(ending);
    ending = null;
    if (before !== null && event.type !== 'ended') outlet.hush();
    if (queue.speaking === null) until = Math.min(until ?? 0, now() + TAIL_MS);
    else {
      until = Math.max(until ?? 0, now() + RENDERS_WITHIN_MS);
      void begin(queue.speaking);
    }
    changed();
  }

  async function begin(queued: Queued): Promise<void> {
    const { number, utterance } = queued;
    const wav = mouth === null ? null : await rendered(mouth, utterance.text);
    // Something else may have come while it was rendered.
    if (queue.speaking?.number !== number) return;
    if (wav !== null) wavs = [...wavs.slice(-7), { id: number, wav }];
    else if (!outlet.words()) return take({ type: 'ended', number });
    const lasts = wav?.durationMs ?? LETTER_MS * utterance.text.length;
    until = now() + lasts + GRACE_MS;
    ending = timers.set(() => take({ type: 'ended', number }), lasts + GRACE_MS);
    outlet.say({ id: number, wav, text: utterance.text, settings: settings() }, () =>
      take({ type: 'ended', number }),
    );
    changed();
  }

  async function rendered(engine: Mouth, text: string): Promise<Wav | null> {
    try {
      return await engine.render(text, voicing());
    } catch (error) {
      log('a sentence could not be spoken', error);
      return null;
    }
  }

  function sayAll(sayings: readonly Saying[], hush: readonly SayKey[] = []): void {
    if (sayings.length + hush.length === 0) return;
    const utterances = audible() ? sayings.map((saying) => utter(saying, settings().language)) : [];
    if (important !== null && hush.includes(important.key)) important = null;
    important = utterances.findLast(({ priority }) => WORTH_SAYING_AGAIN.includes(priority)) ?? important;
    take({ type: 'say', utterances, hush });
  }

  function sound(earcon: Earcon): void {
    if (settings().muted || !outlet.sound(earcon, settings().volume)) return;
    until = Math.max(until ?? 0, now() + earconMs(earcon) + TAIL_MS);
  }

  mouth?.warm(voicing());
  return {
    look() {
      const said = sayChanges(memory, sceneNow(barn));
      memory = said.memory;
      for (const earcon of said.earcons) sound(earcon);
      sayAll(said.sayings, said.hush);
    },
    answered(intent, answer) {
      if (intent.type === 'set-voice' && answer.ok) {
        mouth?.warm(voicing());
        if (settings().muted) take({ type: 'silence' });
      } else if (intent.type === 'skip' && answer.ok) sayAll([{ what: 'skipped' }]);
      else if (!answer.ok && isSaidAloud(answer.code)) sayAll([{ what: 'refused', why: answer.code }]);
    },
    say: (saying) => sayAll([saying]),
    sayAgain() {
      if (important === null || !audible()) return false;
      take({ type: 'say', utterances: [important], hush: [] });
      return true;
    },
    audible,
    tryVoice(earcon) {
      if (earcon === null) sayAll([{ what: 'try-out' }]);
      else sound(earcon);
    },
    view: () => voiceView(barn, queue.speaking, until, outlet.heard(mouth !== null), mouth !== null),
    soundingUntil: () => (until !== null && until > now() ? until : null),
    wav: (id) => wavs.find((each) => each.id === id)?.wav ?? null,
    stop() {
      if (ending !== null) timers.clear(ending);
      mouth?.stop();
    },
  };
}

/** Whether the refusal of an intent is said aloud, whoever asked. */
export function isSaidAloud(code: string): code is RefusedAloud {
  return REFUSED_ALOUD.some((aloud) => aloud === code);
}
