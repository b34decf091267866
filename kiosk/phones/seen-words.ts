import type { PairedDeviceView } from '../../shared/network.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** When a device was last heard of. */
export function seenWords({ open, lastSeenAt }: PairedDeviceView, words: Words, show: Show): string {
  if (open) return words.phones.open;
  return lastSeenAt === null ? words.phones.neverSeen : words.phones.seen(show.when(lastSeenAt));
}
