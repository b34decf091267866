import { z } from 'zod';
import { intentId as id, ref } from './refs.ts';

/** What a paired device may do, each more than the one before: only look, work as a person, set the kiosk up. */
export const DeviceRight = z.enum(['follow', 'act', 'set-up']);
/** What a paired device may do. */
export type DeviceRight = z.infer<typeof DeviceRight>;

/** What kind of thing a paired device is. */
export const DeviceKind = z.enum(['phone', 'tablet', 'computer']);
/** What kind of thing a paired device is. */
export type DeviceKind = z.infer<typeof DeviceKind>;

/** A device of the farm that was paired with the kiosk; kind and number are its name. */
export const PairedDeviceView = z.strictObject({
  id: z.string(),
  kind: DeviceKind,
  number: z.int().positive(),
  right: DeviceRight,
  /** RFC 3339. */
  pairedAt: z.string(),
  /** RFC 3339; `null` where it was never heard of again. */
  lastSeenAt: z.string().nullable(),
  /** Whether it shows the kiosk now. */
  open: z.boolean(),
  /** Who is at work on it. */
  person: z.string().nullable(),
});
/** A device of the farm that was paired with the kiosk. */
export type PairedDeviceView = z.infer<typeof PairedDeviceView>;

/** Who besides the board's own screen is let in. */
export const NetworkView = z.strictObject({
  /** Whether other devices can reach the kiosk: not at all, soon, under `address`, or not because of a trouble. */
  listening: z.enum(['off', 'opening', 'on', 'trouble']),
  trouble: z.enum(['port-taken', 'no-certificate', 'file-unreadable']).nullable(),
  /** Whether the configuration file turns it on, so that the screen cannot turn it off. */
  setByFile: z.boolean(),
  /** Where other devices find it; `null` while it is off or the board has no network. */
  address: z.string().nullable(),
  /** SHA-256 of the board's own certificate, in pairs of hexadecimal digits; `null` behind a proxy or while it is off. */
  fingerprint: z.string().nullable(),
  /** The pairing that is open; its code is told to the board alone, at `GET /api/network/pairing`. */
  pairing: z
    .strictObject({
      right: DeviceRight,
      /** RFC 3339. */
      endsAt: z.string(),
    })
    .nullable(),
  /** How the last pairing ended, for a minute. */
  paired: z.enum(['paired', 'too-many-tries', 'out-of-time']).nullable(),
  devices: z.array(PairedDeviceView),
  /** Who may work on a paired device: those with a PIN. */
  withPin: z.array(z.string()),
});
/** Who besides the board's own screen is let in. */
export type NetworkView = z.infer<typeof NetworkView>;

/** The pairing that is open, as the board's screen shows it. */
export interface PairingCode {
  /** Eight digits. */
  readonly code: string;
  /** Where the device goes, without the code. */
  readonly address: string;
  /** The drawing of an address with the code in it, as an SVG path on `size` by `size` modules. */
  readonly qr: { readonly path: string; readonly size: number };
}

/** Who a page belongs to, as it is told by the server's greeting. */
export const VisitorView = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('board') }),
  z.strictObject({
    kind: z.literal('device'),
    right: DeviceRight,
    /** Who is at work on it; `null` while it only looks on. */
    person: z.string().nullable(),
  }),
]);
/** Who a page belongs to. */
export type VisitorView = z.infer<typeof VisitorView>;

/** What `GET /api/session` answers: as {@link VisitorView}, or that the device is not paired. */
export type SessionView = VisitorView | { readonly kind: 'stranger' };

/** A PIN as it is tapped. */
export const Pin = z.string().regex(/^\d{4,8}$/, 'a PIN has 4 to 8 digits');

/** What answers a code or a PIN that was not taken. */
export const NOT_LET_IN = ['wrong', 'wait', 'no-pairing', 'not-a-pin', 'no-such-person'] as const;
/** What answers a code or a PIN: taken, or why not. */
export type LetIn =
  | { readonly ok: true }
  | { readonly ok: false; readonly why: (typeof NOT_LET_IN)[number]; readonly waitSeconds: number };

/** What the board's screen asks about other devices. */
export const NETWORK_INTENTS = [
  /** Lets other devices of the farm reach the kiosk, or no longer. */
  z.strictObject({ type: z.literal('set-network'), id, on: z.boolean() }),
  /** Opens a pairing; one that was open ends. */
  z.strictObject({ type: z.literal('pair-device'), id, right: DeviceRight }),
  z.strictObject({ type: z.literal('pair-stop'), id }),
  /** Lets a device in no more, from this moment. */
  z.strictObject({ type: z.literal('revoke-device'), id, deviceId: ref }),
  /** Takes the PIN of a person away: nobody works as that person on another device. */
  z.strictObject({ type: z.literal('forget-pin'), id, person: z.string().trim().min(1).max(24) }),
] as const;
