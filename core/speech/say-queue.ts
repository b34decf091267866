import { PRIORITIES, type SayKey, type Utterance } from './utterance.ts';

/** An utterance in the queue. */
export interface Queued {
  readonly utterance: Utterance;
  /** Counts up with everything that is to be said. */
  readonly number: number;
  /** Uptime in milliseconds at which it was to be said. */
  readonly since: number;
}

/** What is being said, and what waits, the next first. */
export interface SayQueue {
  readonly speaking: Queued | null;
  readonly waiting: readonly Queued[];
  readonly count: number;
}

/** Nothing said and nothing to say. */
export const SILENT: SayQueue = { speaking: null, waiting: [], count: 0 };

/** What happens to the queue. */
export type QueueEvent =
  | { readonly type: 'say'; readonly utterances: readonly Utterance[]; readonly hush: readonly SayKey[] }
  /** What was being said is over, whether it was heard or not. */
  | { readonly type: 'ended'; readonly number: number }
  | { readonly type: 'silence' };

/** How long an utterance may wait and still be worth saying, in milliseconds. */
const WORTH_MS: Readonly<Record<Utterance['priority'], number>> = {
  aside: 8000,
  plain: 10_000,
  important: 20_000,
  urgent: 20_000,
};
/** More than this never waits: what is least important is dropped. */
const MOST_WAITING = 6;

/**
 * Takes an event into the queue; whoever plays it compares `speaking` before and after.
 *
 * A newer utterance takes the place of an older one with its key; an urgent one cuts off whatever is less; of those
 * that wait the most important goes first, and of equals the one that came last, except that what came together stays
 * in its order. Something important that an urgent one cut off is said again from its beginning.
 */
export function reduceQueue(queue: SayQueue, event: QueueEvent, uptimeMs: number): SayQueue {
  switch (event.type) {
    case 'silence':
      return { ...SILENT, count: queue.count };
    case 'ended':
      if (queue.speaking?.number !== event.number) return queue;
      return started({ ...queue, speaking: null }, uptimeMs);
    case 'say':
      return started(added(queue, event, uptimeMs), uptimeMs);
  }
}

function added(
  queue: SayQueue,
  { utterances, hush }: Extract<QueueEvent, { type: 'say' }>,
  uptimeMs: number,
): SayQueue {
  const over = new Set<SayKey>([...hush, ...utterances.map(({ key }) => key)]);
  const fresh = utterances.map((utterance, index) => ({
    utterance,
    number: queue.count + 1 + index,
    since: uptimeMs,
  }));
  const count = queue.count + utterances.length + 1;
  let { speaking } = queue;
  const cutOff: Queued[] = [];
  if (speaking !== null && over.has(speaking.utterance.key)) speaking = null;
  else if (speaking !== null && utterances.some(({ priority }) => priority === 'urgent')) {
    const rank = rankOf(speaking);
    if (rank === rankOfPriority('important')) cutOff.push({ ...speaking, number: count, since: uptimeMs });
    if (rank < rankOfPriority('urgent')) speaking = null;
  }
  const older = queue.waiting.filter(({ utterance }) => !over.has(utterance.key));
  return {
    speaking,
    waiting: inOrder([...fresh, ...cutOff, ...older]).slice(0, MOST_WAITING),
    count,
  };
}

/** Stable: of equal importance, the order given stays. */
function inOrder(queued: readonly Queued[]): Queued[] {
  return [...queued].sort((a, b) => rankOf(b) - rankOf(a));
}

function rankOf({ utterance }: Queued): number {
  return rankOfPriority(utterance.priority);
}

function rankOfPriority(priority: Utterance['priority']): number {
  return PRIORITIES.indexOf(priority);
}

function started(queue: SayQueue, uptimeMs: number): SayQueue {
  if (queue.speaking !== null) return queue;
  const worth = queue.waiting.filter(
    ({ utterance, since }) => uptimeMs - since <= WORTH_MS[utterance.priority],
  );
  const [next = null, ...rest] = worth;
  return { ...queue, speaking: next, waiting: rest };
}
