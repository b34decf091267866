import { unreachable } from '../../core/unreachable.ts';

const SCREENS = ['home', 'platform', 'jug', 'day-book', 'board', 'animals', 'worm-check', 'shed'] as const;
/** The screens behind the doors. */
export type Screen = (typeof SCREENS)[number];

/** A place in the kiosk: a screen, then what is open in it, outermost first. */
export interface Place {
  readonly screen: Screen;
  readonly path: readonly string[];
}

/** Reads a place from an address such as "#shed/rules/levamisole-goat"; anything else is home. */
export function placeFrom(hash: string): Place {
  const [first, ...path] = hash.replace(/^#\/?/, '').split('/').filter(Boolean).map(decodeURIComponent);
  const screen = SCREENS.find((candidate) => candidate === first);
  return screen === undefined ? { screen: 'home', path: [] } : { screen, path };
}

/** The address of a place. */
export function hashOf({ screen, path }: Place): string {
  return `#${[screen, ...path].map(encodeURIComponent).join('/')}`;
}

/** One step out: what is open closes, and a screen leads home. */
export function outOf(place: Place): Place {
  return place.path.length > 0
    ? { screen: place.screen, path: place.path.slice(0, -1) }
    : { screen: 'home', path: [] };
}

/** What the rail's door does in a place. */
export function doorOf({ screen, path }: Place): 'home' | 'back' | null {
  switch (screen) {
    case 'home':
      return null;
    case 'platform':
    case 'jug':
    case 'day-book':
    case 'board':
    case 'animals':
    case 'worm-check':
    case 'shed':
      return path.length > 0 ? 'back' : 'home';
    default:
      return unreachable(screen);
  }
}

/** Where the page is; kept in the address, so that a reload comes back to the same place. */
export class Route {
  #place = $state.raw<Place>(placeFrom(location.hash));

  /** The place now. */
  get place(): Place {
    return this.#place;
  }

  /** Goes to a screen, and to what is to be open in it. */
  readonly go = (screen: Screen, ...path: string[]): void => this.#to({ screen, path });

  /** Goes one step out. */
  readonly out = (): void => this.#to(outOf(this.#place));

  #to(place: Place): void {
    this.#place = place;
    history.replaceState(null, '', hashOf(place));
  }
}
