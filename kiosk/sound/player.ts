import { EARCON_RATE, type Earcon, renderEarcon } from '../../core/speech/earcon.ts';

/** The most that is played at once from the page: half of full scale, since an earcon may sound beside a word. */
const LOUDEST = 0.9;
/** Words sound under an earcon, and the tone of a pour under both. */
const TONE_SHARE = 0.25;
/** How fast the tone follows its pitch, in seconds: a leap would click. */
const GLIDE_S = 0.05;

/** The page's way to make sound, through Web Audio; `volume` is in hundredths of the loudest. */
export class Player {
  readonly #audio = new AudioContext();
  readonly #earcons = new Map<Earcon, AudioBuffer>();
  #word: AudioBufferSourceNode | null = null;
  #tone: { readonly oscillator: OscillatorNode; readonly gain: GainNode } | null = null;

  /** Calls whenever the browser begins or ceases to allow sound. */
  constructor(onchange: () => void) {
    this.#audio.onstatechange = onchange;
  }

  /** Whether the browser allows sound. */
  get can(): boolean {
    return this.#audio.state === 'running';
  }

  /** Asks for it; granted from within a touch. */
  unlock(): void {
    if (!this.can) void this.#audio.resume();
  }

  /** Plays a WAV file in place of any other; resolves once it is over or cut off. Rejects where it cannot be read. */
  async word(file: ArrayBuffer, volume: number, isStill: () => boolean): Promise<void> {
    const buffer = await this.#audio.decodeAudioData(file);
    // While it was read something else may have come.
    if (!isStill()) return;
    this.hush();
    const source = this.#start(buffer, volume);
    this.#word = source;
    await new Promise<void>((resolve) => {
      source.onended = () => resolve();
    });
    if (this.#word === source) this.#word = null;
  }

  /** Cuts off the word being played. */
  hush(): void {
    this.#word?.stop();
    this.#word = null;
  }

  /** Sounds an earcon beside whatever is being played. */
  earcon(earcon: Earcon, volume: number): void {
    let buffer = this.#earcons.get(earcon);
    if (buffer === undefined) {
      const samples = renderEarcon(earcon);
      buffer = this.#audio.createBuffer(1, samples.length, EARCON_RATE);
      buffer.getChannelData(0).set(samples);
      this.#earcons.set(earcon, buffer);
    }
    this.#start(buffer, volume);
  }

  /** Holds a tone at a pitch, or ends it with `null`. */
  tone(hz: number | null, volume: number): void {
    if (hz === null || !this.can) {
      this.#tone?.gain.gain.setTargetAtTime(0, this.#audio.currentTime, GLIDE_S);
      this.#tone?.oscillator.stop(this.#audio.currentTime + 5 * GLIDE_S);
      this.#tone = null;
      return;
    }
    this.#tone ??= this.#startTone(hz);
    this.#tone.oscillator.frequency.setTargetAtTime(hz, this.#audio.currentTime, GLIDE_S);
    const loud = (TONE_SHARE * LOUDEST * volume) / 100;
    this.#tone.gain.gain.setTargetAtTime(loud, this.#audio.currentTime, GLIDE_S);
  }

  /** Lets the loudspeaker go. */
  close(): void {
    void this.#audio.close();
  }

  #start(buffer: AudioBuffer, volume: number): AudioBufferSourceNode {
    const source = this.#audio.createBufferSource();
    source.buffer = buffer;
    source.connect(this.#gain((LOUDEST * volume) / 100));
    source.start();
    return source;
  }

  #startTone(hz: number) {
    const oscillator = this.#audio.createOscillator();
    const gain = this.#gain(0);
    oscillator.frequency.value = hz;
    oscillator.connect(gain);
    oscillator.start();
    return { oscillator, gain };
  }

  #gain(value: number): GainNode {
    const gain = this.#audio.createGain();
    gain.gain.value = value;
    gain.connect(this.#audio.destination);
    return gain;
  }
}
