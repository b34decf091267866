import { flushSync, mount, unmount } from 'svelte';
import { vi } from 'vitest';
import App from '../../kiosk/App.svelte';
import { ROOMS } from '../../kiosk/frame/rooms.ts';
import { Catalogue } from '../../kiosk/words/catalogue.svelte.ts';
import { LANGUAGES } from '../../kiosk/words/languages.ts';
import type { KioskState } from '../../shared/state.ts';
import { FakeSocket } from './fake-socket.ts';
import { textOf } from './text-of.ts';

// Fetched before, every screen is there in the same step as the tap that opens it, as it is on a page left standing.
await Promise.all([...Object.values(ROOMS).map((room) => room.get()), LANGUAGES.en.whole.get()]);

/** The whole page over a socket in memory. */
export interface MountedApp {
  /** The socket in use: a new one after each reconnect. */
  readonly socket: FakeSocket;
  readonly sockets: readonly FakeSocket[];
  /** The element of a test id; throws where there is none. */
  get(testid: string): HTMLElement;
  /** The element of a test id, or `null`. */
  find(testid: string): HTMLElement | null;
  /** The text of an element, with plain spaces. */
  text(testid: string): string;
  click(testid: string): void;
  press(testid: string, kind: string, pointerId?: number): void;
  /** Sends a patch with the next number. */
  patch(changes: Partial<KioskState>): void;
  close(): Promise<void>;
}

/** Mounts the page at a place; with a state, the socket has already sent it. */
export function mountApp(
  state: KioskState | null,
  place = 'home',
  http: Readonly<Record<string, unknown>> = {},
  catalogue = new Catalogue(),
): MountedApp {
  vi.stubGlobal(
    'fetch',
    vi.fn(async (path: string) => {
      path = path.replace(/\?.*/, '');
      const known = path in http;
      return new Response(JSON.stringify(known ? http[path] : {}), { status: known ? 200 : 404 });
    }),
  );
  const sockets: FakeSocket[] = [];
  vi.stubGlobal(
    'WebSocket',
    class extends FakeSocket {
      constructor() {
        super();
        sockets.push(this);
      }
    },
  );
  location.hash = place;
  document.body.replaceChildren();
  const app = mount(App, { target: document.body, props: { catalogue } });
  flushSync();
  let seq = 1;
  const last = (): FakeSocket => {
    const socket = sockets.at(-1);
    if (socket === undefined) throw new Error('the page opened no socket');
    return socket;
  };
  if (state !== null) last().welcome(state);
  flushSync();
  const find = (testid: string): HTMLElement | null => document.querySelector(`[data-testid="${testid}"]`);
  const get = (testid: string): HTMLElement => {
    const element = find(testid);
    if (element === null) throw new Error(`nothing on the page is called ${testid}`);
    return element;
  };
  return {
    get socket() {
      return last();
    },
    sockets,
    get,
    find,
    text: (testid) => textOf(get(testid)),
    click: (testid) => {
      get(testid).click();
      flushSync();
    },
    press: (testid, kind, pointerId = 1) => {
      get(testid).dispatchEvent(new PointerEvent(kind, { pointerId, bubbles: true }));
      flushSync();
    },
    patch: (changes) => {
      seq += 1;
      last().tell({ type: 'patch', seq, changes });
      flushSync();
    },
    close: async () => {
      await unmount(app);
      vi.unstubAllGlobals();
    },
  };
}
