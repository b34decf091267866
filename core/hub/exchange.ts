import type { Event } from './event.ts';
import { lastInCommon, type PushRefusal } from './push.ts';

/** By life, the number of the last event that is held. */
export type Heads = ReadonlyMap<string, number>;

/** The last event held of a life: its number and its id. */
export interface Tip {
  readonly sequence: number;
  readonly id: string;
}

/** The records of a kiosk, as far as the exchange of events touches them. */
export interface Holder {
  /** What is held of every life, this kiosk's own and others'. */
  heads(): Heads;
  idAt(life: string, sequence: number): string | undefined;
  /** Events of a life after a sequence, oldest first, a handful at most. */
  after(life: string, sequence: number): readonly Event[];
  /**
   * Takes in events, all or none of them; answers which life did not follow what is held. `more`: the hub holds others that
   * come next. Throws when the disk refuses.
   */
  take(events: readonly Event[], more: boolean): { readonly why: PushRefusal; readonly life: string } | null;
  /** Tells the events of a life after a sequence anew, at the end of this kiosk's own life. Throws when the disk refuses. */
  retell(life: string, sequence: number): void;
}

/** Events of one life for the hub, with the id of the one before them. */
export interface Pushed {
  readonly kiosk: string;
  readonly life: string;
  readonly before: string | null;
  readonly events: readonly Event[];
}

/** What the hub says to pushed events; `head` is what it holds of their life afterwards. */
export type PushAnswer =
  | { readonly ok: true; readonly head: number }
  | { readonly ok: false; readonly why: PushRefusal; readonly head: number };

/** What the hub holds that a kiosk does not. */
export interface Pulled {
  /** A part of it, of each life what follows the kiosk's own. */
  readonly events: readonly Event[];
  /** How far the hub holds each life. */
  readonly heads: Heads;
  /** Lives of which the hub holds another event under the number of the kiosk's last. */
  readonly parted: readonly string[];
}

/** The line to the hub. Each call may be lost, or its answer: then it throws, and may be made again. */
export interface HubLine {
  push(batch: Pushed): Promise<PushAnswer>;
  /** Waits up to so many milliseconds for news where there are none. */
  pull(have: ReadonlyMap<string, Tip>, waitMs: number): Promise<Pulled>;
  idAt(life: string, sequence: number): Promise<string | null>;
}

/** The lives of which `mine` holds more than `theirs`. */
export function ahead(mine: Heads, theirs: Heads): string[] {
  return [...mine].filter(([life, head]) => head > (theirs.get(life) ?? 0)).map(([life]) => life);
}

/**
 * Gives the hub all that it lacks of what is held here, whoever told it; answers how far it holds each life then.
 *
 * A hub that was put back to an earlier state gets again what it lost, from whichever kiosk holds it. Throws where the
 * line does.
 */
export async function pushLacking(kiosk: Holder, hub: HubLine, known: Heads): Promise<Heads> {
  const heads = new Map(known);
  for (;;) {
    const [life] = ahead(kiosk.heads(), heads);
    if (life === undefined) return heads;
    const from = heads.get(life) ?? 0;
    const events = kiosk.after(life, from);
    const [first] = events;
    if (first === undefined) return heads;
    const before = from === 0 ? null : (kiosk.idAt(life, from) ?? null);
    const answer = await hub.push({ kiosk: first.kiosk, life, before, events });
    if (!answer.ok && answer.why === 'out-of-order')
      throw new Error(`the hub finds life ${life} out of order`);
    if (!answer.ok && answer.why === 'sequence-reused') await partWays(kiosk, hub, life);
    heads.set(life, answer.head);
  }
}

/** Takes in a part of what the hub holds and this kiosk does not; answers what came and how far the hub holds each life. */
export async function pullOnce(kiosk: Holder, hub: HubLine, waitMs: number): Promise<Pulled> {
  const have = new Map<string, Tip>();
  for (const [life, sequence] of kiosk.heads()) {
    const id = kiosk.idAt(life, sequence);
    if (id !== undefined) have.set(life, { sequence, id });
  }
  const pulled = await hub.pull(have, waitMs);
  for (const life of pulled.parted) await partWays(kiosk, hub, life);
  const then = new Map(kiosk.heads());
  for (const { life, sequence } of pulled.events) then.set(life, sequence);
  const more = ahead(pulled.heads, then).length > 0;
  const refused = pulled.events.length === 0 ? null : kiosk.take(pulled.events, more);
  // What is held changed while the question was on its way: the next one asks anew.
  return refused === null ? pulled : { ...pulled, events: [] };
}

/** Two hold other events under one number of a life: the hub keeps the number, this kiosk tells its own anew. */
async function partWays(kiosk: Holder, hub: HubLine, life: string): Promise<void> {
  const mine = kiosk.heads().get(life) ?? 0;
  const common = await lastInCommon(
    mine,
    async (sequence) => (await hub.idAt(life, sequence)) === kiosk.idAt(life, sequence),
  );
  kiosk.retell(life, common);
}
