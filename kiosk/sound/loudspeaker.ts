import { pourTone } from '../../core/speech/pour-tone.ts';
import { unreachable } from '../../core/unreachable.ts';
import type { KioskState } from '../../shared/state.ts';
import type { LoudspeakerMessage, VoiceMessage } from '../../shared/voice.ts';
import { hasOwnWords, hushOwnWords, sayInOwnWords } from './own-words.ts';
import { Player } from './player.ts';

/** Touches by which a browser lets a page sound. */
const TOUCHES = ['pointerdown', 'pointerup', 'keydown'] as const;

/** The page's loudspeaker: does what the server says, and tells it how it fares. */
export class Loudspeaker {
  readonly #tell: (message: LoudspeakerMessage) => void;
  readonly #player = new Player(() => this.#report());
  #saying: number | null = null;
  /** Whether the server chose this page to speak: only then the pour sounds here. */
  #chosen = false;

  constructor(tell: (message: LoudspeakerMessage) => void) {
    this.#tell = tell;
    for (const touch of TOUCHES) addEventListener(touch, this.#touched, { capture: true, passive: true });
    // A browser learns of its voices late.
    if (typeof speechSynthesis !== 'undefined') speechSynthesis.onvoiceschanged = () => this.#report();
    // Where touching is not asked for, as on the kiosk's own screen, it sounds at once.
    this.#player.unlock();
  }

  /** The connection is new: the server knows nothing of this page yet. */
  greet(): void {
    this.#chosen = false;
    this.#report();
  }

  /** Takes what the server says. */
  take(message: VoiceMessage): void {
    this.#chosen = true;
    switch (message.type) {
      case 'say':
        void this.#say(message);
        return;
      case 'hush':
        this.#hush();
        return;
      case 'earcon':
        this.#player.earcon(message.earcon, message.volume);
        return;
      default:
        unreachable(message);
    }
  }

  /** Follows the state: the tone of a pour rises with the water. */
  follow({ jug, voice }: Pick<KioskState, 'jug' | 'voice'>): void {
    const pour = jug.step === 'pour' ? jug.pour : null;
    const near = pour !== null && (pour.advice === 'pour' || pour.advice === 'slow');
    const sounds = near && this.#chosen && !voice.muted;
    this.#player.tone(
      sounds ? pourTone(pour.nowGrams, pour.targetGrams, pour.bandGrams) : null,
      voice.volume,
    );
  }

  /** Lets the loudspeaker go. */
  close(): void {
    for (const touch of TOUCHES) removeEventListener(touch, this.#touched, { capture: true });
    this.#hush();
    this.#player.close();
  }

  readonly #touched = (): void => this.#player.unlock();

  #report(): void {
    this.#tell({ type: 'loudspeaker', can: this.#player.can, words: hasOwnWords() });
  }

  async #say(message: Extract<VoiceMessage, { type: 'say' }>): Promise<void> {
    this.#hush();
    const { id } = message;
    this.#saying = id;
    try {
      if (message.wav === null) await sayInOwnWords(message);
      else await this.#player.word(await fetched(message.wav), message.volume, () => this.#saying === id);
      this.#end(id, 'ended');
    } catch {
      this.#end(id, 'failed');
    }
  }

  #end(id: number, how: 'ended' | 'failed'): void {
    if (this.#saying !== id) return;
    this.#saying = null;
    this.#tell({ type: 'said', id, how });
  }

  #hush(): void {
    this.#saying = null;
    this.#player.hush();
    hushOwnWords();
  }
}

async function fetched(path: string): Promise<ArrayBuffer> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  return response.arrayBuffer();
}
