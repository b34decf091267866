import type { DeviceRight } from '../../shared/network.ts';

/** Who asks: the board itself, a device that was paired with it and who works there, or anybody else. */
export type Visitor =
  | { readonly kind: 'board' }
  | {
      readonly kind: 'device';
      readonly id: string;
      readonly right: DeviceRight;
      readonly person: string | null;
    }
  | { readonly kind: 'stranger' };

/** The board itself. */
export const BOARD: Visitor = { kind: 'board' };
/** Whoever is not known. */
export const STRANGER: Visitor = { kind: 'stranger' };
