import type { Earcon } from '../../core/speech/earcon.ts';
import type { Wav } from '../../hardware/mouth/wav.ts';
import type { VoiceSettings, VoiceView } from '../../shared/voice.ts';

/** An utterance on its way to a loudspeaker. */
export interface Spoken {
  readonly id: number;
  /** Its sound; `null` where the loudspeaker must make the words itself. */
  readonly wav: Wav | null;
  readonly text: string;
  readonly settings: VoiceSettings;
}

/** Where sound goes: the kiosk's own page, or the board's loudspeaker. */
export interface Outlet {
  /** Whether it would be heard; `withEngine` says that the kiosk makes the sound of its words itself. */
  heard(withEngine: boolean): VoiceView['heard'];
  /** Whether it can make words by itself. */
  words(): boolean;
  /** Says one thing and nothing else; `ended` is called once it is over, or cannot be said. */
  say(spoken: Spoken, ended: () => void): void;
  /** Stops what is being said. */
  hush(): void;
  /** Sounds an earcon beside whatever is being said, at hundredths of the loudest; whether it could. */
  sound(earcon: Earcon, volume: number): boolean;
}
