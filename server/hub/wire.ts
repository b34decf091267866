import { z } from 'zod';
import type { Event } from '../../core/hub/event.ts';
import { OfficeSaid } from '../../shared/farm.ts';

/** The most events one request carries. */
export const MOST_EVENTS = 500;
/** The most bytes a request may have. */
export const MOST_BYTES = 2 * 1024 * 1024;
/** The longest a kiosk may ask the hub to wait for news, in milliseconds. */
export const LONGEST_WAIT_MS = 20_000;
/** The most lives of kiosks one farm may have. */
export const MOST_LIVES = 10_000;

const name = z.string().regex(/^[\w-]{1,64}$/);
const sequence = z.int().positive();

/** One event as it crosses the wire; of which life it is stands beside it. */
const Told = z.strictObject({
  sequence,
  id: name,
  clock: z.string().regex(/^\d{15}\.\d{5}$/),
  kind: z.string().regex(/^[a-z-]{1,40}$/),
  body: z.record(z.string(), z.unknown()),
});

/** `POST /v1/push`: events of one life, in their order, with the id of the one before them. */
export const PushBody = z.strictObject({
  kiosk: name,
  life: name,
  before: name.nullable(),
  events: z.array(Told).min(1).max(MOST_EVENTS),
});
/** Pushed events. */
export type PushBody = z.infer<typeof PushBody>;

/** What the hub says to them. */
export const PushReply = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), head: z.int() }),
  z.strictObject({
    ok: z.literal(false),
    why: z.enum(['out-of-order', 'gap', 'sequence-reused']),
    head: z.int(),
  }),
]);

/** `POST /v1/pull`: how far each life is held, and how long to wait for news. */
export const PullBody = z.strictObject({
  kiosk: name,
  have: z
    .record(name, z.strictObject({ sequence, id: name }))
    .refine((have) => Object.keys(have).length <= MOST_LIVES, { message: 'too many lives' }),
  waitMs: z.int().min(0).max(LONGEST_WAIT_MS),
});

/** What the hub holds that the kiosk does not. */
export const PullReply = z.strictObject({
  events: z.array(z.strictObject({ kiosk: name, life: name, ...Told.shape })),
  heads: z.record(name, z.int()),
  parted: z.array(name),
  /** The names of the kiosks of the farm, by kiosk. */
  kiosks: z.record(name, z.string()),
}) satisfies z.ZodType<{ events: Event[] }>;

/** `POST /v1/id`: which event is held under a number. */
export const IdBody = z.strictObject({ life: name, sequence });
/** Its id, or `null` where none is held. */
export const IdReply = z.strictObject({ id: name.nullable() });

/** `POST /v1/offices`: which offices read the farm, or ask to; what is said to one of them comes first. */
export const OfficesBody = z.strictObject({
  say: OfficeSaid.extend({ office: name }).nullable(),
});

/** Why a request was refused. */
export const RefusedReply = z.strictObject({
  code: z.enum([
    'unknown-kiosk',
    'revoked',
    'bad-input',
    'too-large',
    'too-often',
    'no-such-office',
    'failed',
  ]),
  message: z.string(),
});
/** Why a request was refused. */
export type RefusedReply = z.infer<typeof RefusedReply>;

/** What lets a kiosk in: written by the hub into a file, carried to the kiosk on a stick, and a secret. */
export const Invitation = z.strictObject({
  /** Where the hub is, such as https://hub.farm:4185. */
  hub: z.url({ protocol: /^https?$/ }).max(200),
  farm: name,
  /** What the kiosk is called on the farm. */
  name: z.string().trim().min(1).max(40),
  credential: name,
  key: z.string().regex(/^[\w-]{43}$/),
  /** The certificate the hub is known by, as PEM; `null` where a public authority vouches for it. */
  ca: z.string().max(20_000).nullable(),
});
/** What lets a kiosk in. */
export type Invitation = z.infer<typeof Invitation>;
