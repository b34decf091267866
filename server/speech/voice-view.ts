import type { Queued } from '../../core/speech/say-queue.ts';
import { VOICES } from '../../hardware/mouth/voices.ts';
import type { VoiceView } from '../../shared/voice.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { atUptime } from '../view/times.ts';

/** The voice as the wire carries it; `untilMs` is the uptime by which what is being said is over. */
export function voiceView(
  { memory, clock }: BarnContext,
  speaking: Queued | null,
  untilMs: number | null,
  heard: VoiceView['heard'],
  hasEngine: boolean,
): VoiceView {
  const now = clock.now();
  return {
    ...memory.settings.voice,
    voices: VOICES.map(({ id, language }) => ({ id, language })),
    engine: hasEngine ? 'kiosk' : 'browser',
    heard,
    speaking:
      speaking === null
        ? null
        : {
            id: speaking.number,
            what: speaking.utterance.what,
            text: speaking.utterance.text,
            until: atUptime(untilMs ?? now.uptimeMs, now),
          },
  };
}
