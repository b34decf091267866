import type { Event } from '../../core/hub/event.ts';
import type { Holder } from '../../core/hub/exchange.ts';
import type { Barn } from '../barn/barn.ts';

/** So many events are pushed at once at most, and so many bytes of them. */
const MOST_PUSHED = 200;
const MOST_BYTES = 512 * 1024;

/** The kiosk's records as the exchange with a hub sees them. */
export function createHolder(barn: Pick<Barn, 'context' | 'receive' | 'retell'>): Holder {
  const { events, received } = barn.context.store;
  return {
    heads: () => new Map(received.held().map(({ life, head }) => [life, head])),
    idAt: received.idAt,
    after: (life, sequence) => withinBytes(events.after(life, sequence, MOST_PUSHED)),
    take: barn.receive,
    retell: barn.retell,
  };
}

/** The first of some events that together are small enough to be sent at once; one at least. */
function withinBytes(events: readonly Event[]): readonly Event[] {
  let room = MOST_BYTES;
  const end = events.findIndex(({ body }, place) => {
    room -= JSON.stringify(body).length;
    return room < 0 && place > 0;
  });
  return end < 0 ? events : events.slice(0, end);
}
