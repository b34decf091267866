import type { SessionView } from '../../../shared/network.ts';
import type { KioskState } from '../../../shared/state.ts';

/** A picture to take: a place, the state shown there, and the controls tapped before. */
export interface Scene {
  readonly name: string;
  /** The address behind the "#". */
  readonly place: string;
  readonly state: KioskState;
  /** What the server answers to a path asked by HTTP; a text is a drawing. */
  readonly http?: Readonly<Record<string, unknown>>;
  /** Whose page it is; left out, the board's. */
  readonly visitor?: SessionView;
  /** What the server tells once the page stands. */
  readonly later?: Partial<KioskState>;
  /** Test ids tapped in turn; one that starts with "hold:" is kept pressed in the picture. */
  readonly taps?: readonly string[];
}
