import type { ServerMessage } from '../../shared/message.ts';
import type { KioskState } from '../../shared/state.ts';
import { keepSame } from './keep-same.ts';

/** What the page knows of the server; only `live` holds a state, so nothing old can be shown after a cut. */
export type Feed =
  | { readonly status: 'connecting' }
  | { readonly status: 'greeted'; readonly bootId: string }
  | { readonly status: 'live'; readonly bootId: string; readonly seq: number; readonly state: KioskState }
  | { readonly status: 'cut' }
  | { readonly status: 'mismatch' };

/** The feed before anything was heard. */
export const CONNECTING: Feed = { status: 'connecting' };

/** Takes one message into the feed; state before a greeting is a mismatch, a patch from the past is ignored. */
export function applyMessage(feed: Feed, message: ServerMessage): Feed {
  switch (message.type) {
    case 'hello':
      return { status: 'greeted', bootId: message.bootId };
    case 'snapshot':
      if (feed.status !== 'greeted' && feed.status !== 'live') return { status: 'mismatch' };
      return {
        status: 'live',
        bootId: feed.bootId,
        seq: message.seq,
        state: feed.status === 'live' ? keepSame(feed.state, message.state) : message.state,
      };
    case 'patch':
      if (feed.status !== 'live') return { status: 'mismatch' };
      if (message.seq <= feed.seq) return feed;
      return { ...feed, seq: message.seq, state: patched(feed.state, message.changes) };
    case 'visitor':
    case 'answer':
    case 'pong':
    case 'say':
    case 'hush':
    case 'earcon':
    case 'spoken-wish':
      return feed;
  }
}

function patched(state: KioskState, changes: Partial<{ [K in keyof KioskState]: unknown }>): KioskState {
  const present = Object.entries(changes).filter(([, value]) => value !== undefined);
  return keepSame(state, { ...state, ...Object.fromEntries(present) });
}
