import type { OpenFailureCode } from './open-failure.ts';

/** Why a link was lost: the port did not open, it went away, or it stayed silent too long. */
export type LostReason = OpenFailureCode | 'disconnected' | 'no-frames';

/** Where the link to one device stands. Only `ready` carries current values: in every other state they are blank. */
export type LinkState =
  /** No such device is configured. */
  | { readonly status: 'absent' }
  /** The first attempt to open is under way. */
  | { readonly status: 'opening' }
  /** Open; `drain` drops what arrives, `probe` waits for the first good frame. `attempt` counts tries since ready. */
  | { readonly status: 'settling'; readonly stage: 'drain' | 'probe'; readonly attempt: number }
  | { readonly status: 'ready' }
  /** Open, but no good frame for too long. */
  | { readonly status: 'silent' }
  /** Not open; tries go on for ever. `remedy` is one sentence for the keeper. */
  | {
      readonly status: 'lost';
      readonly reason: LostReason;
      readonly remedy: string;
      readonly attempt: number;
      readonly opening: boolean;
    };
