import type { Event } from '../../core/hub/event.ts';
import { animalsNamed } from '../../core/round/day-book.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { lookForDosedApart } from '../barn/dosed-apart.ts';
import { withReceived } from '../barn/memory.ts';
import { runRound } from '../barn/run-round.ts';
import { nothingTouched, type Touched, touchedByBoth } from '../store/receive-records.ts';

/** Memory is behind the disk for no longer than this, in milliseconds (our own guard). */
const LONGEST_UNREAD_MS = 5000;

/**
 * Takes in what other kiosks told, on disk and in memory, and ends an offer that rests on what was changed by it. While
 * `more` is to come, memory is left behind: each part of years touches the whole herd, and to read that anew takes longer
 * than the part. Belongs in a transaction, which is taken back where this throws: `NotReceived` where a life does not follow
 * what is held here, or what the disk says.
 */
export function takeIn(barn: BarnContext, events: readonly Event[], more: boolean): void {
  const { store, clock } = barn;
  const here = { wallMs: Math.round(clock.now().wallMs), clockTrusted: clock.isTrusted() };
  const touched = nothingTouched();
  for (const run of runsOf(events)) store.received.take(run, here, touched);
  for (const id of touched.treatments) {
    const entry = store.dayBook.entry(id);
    // Still waiting for what it names.
    if (entry === undefined) continue;
    for (const animalId of animalsNamed(entry)) touched.animals.add(animalId);
    lookForDosedApart(barn, entry, here.wallMs);
  }
  const { unread } = barn.memory;
  barn.memory = {
    ...barn.memory,
    unread:
      unread === null
        ? { touched, sinceMs: clock.now().uptimeMs }
        : { ...unread, touched: touchedByBoth(unread.touched, touched) },
  };
  if (more && !inVisit(barn, touched)) readLongUnread(barn);
  else readUnread(barn);
}

/** Reads into memory what was taken in and left on the disk for as long as it may be. */
export function readLongUnread(barn: BarnContext): void {
  const { unread } = barn.memory;
  if (unread !== null && barn.clock.now().uptimeMs - unread.sinceMs >= LONGEST_UNREAD_MS) readUnread(barn);
}

/** Reads into memory what was taken in and left on the disk: whatever a person asks for is judged by all that is known. */
export function readUnread(barn: BarnContext): void {
  const { unread } = barn.memory;
  if (unread === null) return;
  barn.memory = { ...withReceived(barn.memory, barn.store, unread.touched), unread: null };
  // An offer of another animal rests on nothing that came.
  if (inVisit(barn, unread.touched)) runRound(barn, { type: 'world-changed', what: 'rules' });
}

/** Events that follow each other in one life, a run at a time. */
export function runsOf(events: readonly Event[]): Event[][] {
  const runs: Event[][] = [];
  for (const event of events) {
    const last = runs.at(-1);
    if (last?.[0]?.life === event.life) last.push(event);
    else runs.push([event]);
  }
  return runs;
}

function inVisit({ memory }: BarnContext, { animals }: Touched): boolean {
  const { phase } = memory.round;
  const who = 'visit' in phase ? phase.visit?.who?.animalId : undefined;
  const offered = phase.step === 'offered' ? phase.offer.animal.id : undefined;
  return [who, offered].some((id) => id !== undefined && animals.has(id));
}
