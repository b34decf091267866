import type { LoudspeakerMessage } from '../../shared/voice.ts';
import { type Loudspeaker, Loudspeakers } from './loudspeakers.ts';
import type { Outlet } from './outlet.ts';

/** The outlet that is a page, and the way by which pages tell of themselves. */
export interface PageOutlet extends Outlet {
  told(page: Loudspeaker, message: LoudspeakerMessage): void;
  gone(page: Loudspeaker): void;
}

/** Speaks on the page that is open on the kiosk's own screen. `changed` hears when that page changes. */
export function createPageOutlet(changed: () => void): PageOutlet {
  let saying: { readonly id: number; readonly ended: () => void } | null = null;
  const over = () => {
    const { ended } = saying ?? {};
    saying = null;
    ended?.();
  };
  const pages = new Loudspeakers((speakerChanged) => {
    // Whatever the page before was saying, nobody tells its end.
    if (speakerChanged) over();
    changed();
  });
  return {
    heard(withEngine) {
      if (pages.current !== null) return withEngine || pages.words ? 'heard' : 'no-voice';
      return pages.open ? 'locked' : 'no-page';
    },
    words: () => pages.words,
    say({ id, wav, text, settings }, ended) {
      const page = pages.current;
      if (page === null) return ended();
      saying = { id, ended };
      const { language, rate, volume } = settings;
      page.send({
        type: 'say',
        id,
        wav: wav === null ? null : `/api/speech/${id}.wav`,
        text,
        language,
        rate,
        volume,
      });
    },
    hush() {
      saying = null;
      pages.current?.send({ type: 'hush' });
    },
    sound(earcon, volume) {
      pages.current?.send({ type: 'earcon', earcon, volume });
      return pages.current !== null;
    },
    told(page, message) {
      if (message.type === 'loudspeaker') pages.told(page, message);
      else if (page === pages.current && message.id === saying?.id) over();
    },
    gone: (page) => pages.gone(page),
  };
}
