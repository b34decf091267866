import type { Timers } from '../../hardware/serial/timers.ts';
import type { FarmView, OfficeSaid, OfficesView } from '../../shared/farm.ts';
import type { Refusal } from '../../shared/intent.ts';
import type { Barn } from '../barn/barn.ts';
import { rfc3339 } from '../view/times.ts';
import { createHolder } from './holder.ts';
import { forgetHub, invitationOn, keepInvitation, readJoined } from './joining.ts';
import type { openHubLine } from './line.ts';
import { startSync } from './worker.ts';

/** How often it is looked whether an invitation lies on a stick. */
const LOOK_EVERY_MS = 2000;

/** The sharing of the herd with the other kiosks of the farm, while this one runs. */
export interface Farm {
  view(): FarmView['sharing'];
  /** Takes the invitation on the stick; the kiosk starts anew. Throws when the disk refuses. */
  join(): Refusal | null;
  /** Shares no more; the kiosk starts anew, and keeps what came. Throws when the disk refuses. */
  leave(): Refusal | null;
  /** The offices of the hub, once something was said to one of them (`null`: nothing is). Rejects where there is no hub or it does not do it. */
  offices(say: OfficeSaid | null): Promise<OfficesView>;
  /** Hears that something may have been written. */
  look(): void;
  stop(): Promise<void>;
}

/** What is shared, and through what. */
export interface FarmOptions {
  readonly dataFolder: string;
  readonly barn: Barn;
  readonly openHub: typeof openHubLine;
  readonly sticks: () => readonly string[];
  readonly timers: Timers;
  readonly random: () => number;
  readonly changed: () => void;
  readonly log: (message: string, error: unknown) => void;
  /** Starts the kiosk anew. */
  readonly restart: () => void;
}

/** The sharing of a kiosk that shares nothing: a demo, or one whose records cannot be read. */
export const NO_FARM: Farm = {
  view: () => ({ kind: 'demo' }),
  join: () => 'no-invitation',
  leave: () => 'no-invitation',
  offices: () => Promise.reject(new Error('this kiosk shares nothing')),
  look: () => {},
  stop: async () => {},
};

/** Shares the herd through the hub of the invitation in the data folder, if there is one. */
export function joinFarm(options: FarmOptions): Farm {
  const { dataFolder, barn, openHub, sticks, restart, timers, ...runs } = options;
  const { store, clock } = barn.context;
  const joined = readJoined(dataFolder);
  const { kiosk } = store.events.self();
  const line =
    joined.kind === 'joined'
      ? openHub({ invitation: joined.invitation, kiosk, named: (kiosks) => store.hubKiosks.keep(kiosks) })
      : null;
  const sync = line === null ? null : startSync({ kiosk: createHolder(barn), hub: line, timers, ...runs });
  let found: ReturnType<typeof invitationOn> = null;
  let lookedAt = Number.NEGATIVE_INFINITY;

  function onStick(): typeof found {
    if (timers.now() - lookedAt >= LOOK_EVERY_MS) {
      lookedAt = timers.now();
      found = invitationOn(sticks());
    }
    return found;
  }

  function view(): FarmView['sharing'] {
    if (joined.kind === 'unreadable') return joined;
    if (joined.kind === 'none' || sync === null) {
      const invitation = onStick();
      if (invitation === null || 'why' in invitation) return { kind: 'none', invitation };
      return { kind: 'none', invitation: { name: invitation.name, hub: invitation.hub } };
    }
    const { lastAtMs, ...now } = sync.view();
    const { name, hub } = joined.invitation;
    return {
      kind: 'hub',
      name,
      hub,
      others: store.hubKiosks.othersThan(kiosk),
      lastAt: lastAtMs === null ? null : rfc3339(clock.now().wallMs - (timers.now() - lastAtMs)),
      waiting: store.received.waiting(),
      ...now,
    };
  }

  return {
    view,
    join() {
      const invitation = joined.kind === 'none' ? onStick() : null;
      if (invitation === null || 'why' in invitation) return 'no-invitation';
      keepInvitation(dataFolder, invitation);
      restart();
      return null;
    },
    leave() {
      if (joined.kind === 'none') return 'no-invitation';
      forgetHub(dataFolder);
      restart();
      return null;
    },
    offices: async (say) => (line === null ? NO_FARM.offices(say) : line.offices(say)),
    look: () => sync?.look(),
    async stop() {
      const ended = sync?.stop();
      // What still waits for an answer ends with the line.
      line?.close();
      await ended;
    },
  };
}
