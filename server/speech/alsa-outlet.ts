import { EARCON_RATE, renderEarcon } from '../../core/speech/earcon.ts';
import type { Playing } from '../../hardware/mouth/alsa-player.ts';
import { quieter, type Wav, wavOfSamples } from '../../hardware/mouth/wav.ts';
import type { Outlet } from './outlet.ts';

/** Speaks on the board's own loudspeaker, for a kiosk without a screen. `play` begins a sound. */
export function createAlsaOutlet(play: (wav: Wav) => Playing, changed: () => void): Outlet {
  let saying: Playing | null = null;
  let works = true;

  function begin(wav: Wav, volume: number): Playing {
    const playing = play(quieter(wav, volume / 100));
    void playing.ended.then((played) => {
      if (played === works) return;
      works = played;
      changed();
    });
    return playing;
  }

  return {
    heard: (withEngine) => (withEngine ? (works ? 'heard' : 'no-player') : 'no-voice'),
    words: () => false,
    say({ wav, settings }, ended) {
      if (wav === null) return ended();
      const playing = begin(wav, settings.volume);
      saying = playing;
      void playing.ended.then(() => {
        if (saying !== playing) return;
        saying = null;
        ended();
      });
    },
    hush() {
      const playing = saying;
      saying = null;
      playing?.cut();
    },
    sound(earcon, volume) {
      begin(wavOfSamples(renderEarcon(earcon), EARCON_RATE), volume);
      return true;
    },
  };
}
