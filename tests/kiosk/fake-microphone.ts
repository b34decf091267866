import { vi } from 'vitest';

/** A microphone of a page that has none: what it hears and how it fails is put in by hand. */
export interface FakeMicrophone {
  /** How the next opening fails; `null` opens it. */
  refuse: string | null;
  /** Holds the next openings back until it is called. */
  hold(): () => void;
  /** How often the page asked for a microphone, and how many it holds now. */
  readonly asked: MediaStreamConstraints[];
  readonly held: number;
  /** What it hears: 16-bit samples, as the audio thread hands them on. */
  hears(samples: readonly number[]): void;
  /** Pulls it out, and tells of another that came. */
  unplug(): void;
  plugIn(): void;
  /** Whether the browser lets sound flow. */
  flow(flows: boolean): void;
}

/** Gives the page a microphone by stubbing the browser's own ways to one; `vi.unstubAllGlobals` takes it away. */
export function fakeMicrophone(): FakeMicrophone {
  let held = 0;
  let gate: Promise<void> = Promise.resolve();
  let flows = true;
  const changes = new Set<() => void>();
  const asked: MediaStreamConstraints[] = [];
  let track: { onended: (() => void) | null; stop(): void } | null = null;
  let port: { onmessage: ((event: { data: ArrayBuffer }) => void) | null } = { onmessage: null };
  const audios = new Set<{ onstatechange: (() => void) | null }>();

  const devices = {
    addEventListener: (_: string, listener: () => void) => changes.add(listener),
    removeEventListener: (_: string, listener: () => void) => changes.delete(listener),
    async getUserMedia(constraints: MediaStreamConstraints) {
      asked.push(constraints);
      await gate;
      if (fake.refuse !== null) throw new DOMException('refused', fake.refuse);
      held += 1;
      let stopped = false;
      const own = {
        onended: null,
        stop() {
          if (!stopped) held -= 1;
          stopped = true;
        },
      };
      track = own;
      return { getTracks: () => [own], getAudioTracks: () => [own] };
    },
  };
  class FakeAudioContext {
    readonly sampleRate: number;
    onstatechange: (() => void) | null = null;
    readonly audioWorklet = { addModule: async () => {} };
    constructor({ sampleRate = 48_000 } = {}) {
      this.sampleRate = sampleRate;
      audios.add(this);
    }
    get state() {
      return flows ? 'running' : 'suspended';
    }
    createMediaStreamSource = () => ({ connect: () => {} });
    async resume() {}
    async close() {
      audios.delete(this);
    }
  }
  class FakeWorkletNode {
    readonly port: typeof port = { onmessage: null };
    constructor() {
      port = this.port;
    }
  }
  const fake: FakeMicrophone = {
    refuse: null,
    hold() {
      let open = (): void => {};
      gate = new Promise((resolve) => {
        open = resolve;
      });
      return open;
    },
    asked,
    get held() {
      return held;
    },
    hears: (samples) => port.onmessage?.({ data: new Int16Array(samples).buffer }),
    unplug: () => track?.onended?.(),
    plugIn() {
      for (const change of [...changes]) change();
    },
    flow(next) {
      flows = next;
      for (const audio of audios) audio.onstatechange?.();
    },
  };
  vi.stubGlobal('AudioContext', FakeAudioContext);
  vi.stubGlobal('AudioWorkletNode', FakeWorkletNode);
  Object.defineProperty(navigator, 'mediaDevices', { value: devices, configurable: true });
  return fake;
}
