import workletUrl from './pcm-worklet.ts?worker&url';

/** The rate the ear works at, in samples a second: sent as it is, nothing need be turned twice. */
const EAR_HZ = 16_000;

/** An open microphone and the audio graph behind it. */
export interface MicrophoneLine {
  /** Samples a second, one channel. */
  readonly rate: number;
  /** Whether sound flows: browsers may hold it back until the page is touched. */
  readonly flows: boolean;
  /** Asks for sound to flow; granted from within a touch. */
  resume(): void;
  /** Lets the microphone go. */
  close(): void;
}

/** Whom an open line tells. */
export interface MicrophoneEars {
  /** 16-bit samples, the low byte first on every machine a browser runs on. */
  readonly onsound: (samples: ArrayBuffer) => void;
  /** Sound began or ceased to flow. */
  readonly onflow: () => void;
  /** The microphone is gone: unplugged, taken away, or its graph failed. */
  readonly onlost: () => void;
}

/**
 * Nothing is done to the sound before the ear hears it. The ear's limits were set on plain sound and its engine takes
 * noise out itself; a gain that follows the voice lifts the noise of each pause up to the gate; and there is no echo
 * to cancel, since the ear is deaf while the kiosk speaks.
 */
const WANTED: MediaTrackConstraints = {
  channelCount: 1,
  echoCancellation: false,
  noiseSuppression: false,
  autoGainControl: false,
};

/** Opens the microphone; rejects with the browser's error where it cannot. */
export async function openMicrophone(
  devices: Pick<MediaDevices, 'getUserMedia'>,
  { onsound, onflow, onlost }: MicrophoneEars,
): Promise<MicrophoneLine> {
  const stream = await devices.getUserMedia({ audio: WANTED });
  const end = (): void => {
    for (const track of stream.getTracks()) track.stop();
  };
  try {
    const { audio, source } = graphFor(stream);
    await audio.audioWorklet.addModule(workletUrl);
    const capture = new AudioWorkletNode(audio, 'capture', {
      numberOfOutputs: 0,
      channelCount: 1,
      channelCountMode: 'explicit',
    });
    capture.port.onmessage = ({ data }) => onsound(data as ArrayBuffer);
    capture.onprocessorerror = onlost;
    audio.onstatechange = onflow;
    for (const track of stream.getAudioTracks()) track.onended = onlost;
    source.connect(capture);
    return {
      rate: audio.sampleRate,
      get flows() {
        return audio.state === 'running';
      },
      resume: () => void audio.resume(),
      close: () => {
        capture.port.onmessage = null;
        audio.onstatechange = null;
        end();
        void audio.close();
      },
    };
  } catch (error) {
    end();
    throw error;
  }
}

/** A graph at the ear's own rate; at the microphone's where the browser does not turn one into the other. */
function graphFor(stream: MediaStream): { audio: AudioContext; source: MediaStreamAudioSourceNode } {
  const audio = new AudioContext({ sampleRate: EAR_HZ });
  try {
    return { audio, source: audio.createMediaStreamSource(stream) };
  } catch {
    void audio.close();
    const own = new AudioContext();
    return { audio: own, source: own.createMediaStreamSource(stream) };
  }
}
