/** How well a microphone hears a voice, by the loudest of the last seconds. */
export type LoudnessVerdict = 'silent' | 'soft' | 'good' | 'loud';

/** Louder than these, in dB under full scale, is no longer silent, no longer soft, and too loud: our own guard. */
const HEARD_DB = -62;
const WELL_HEARD_DB = -42;
const TOO_LOUD_DB = -8;

/** Judges the loudest stretch heard, in dB under full scale. */
export function verdictOf(loudestDb: number): LoudnessVerdict {
  if (loudestDb < HEARD_DB) return 'silent';
  if (loudestDb < WELL_HEARD_DB) return 'soft';
  return loudestDb <= TOO_LOUD_DB ? 'good' : 'loud';
}
