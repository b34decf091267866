import type { Event } from '../../core/hub/event.ts';
import { animalsNamed } from '../../core/round/day-book.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import { lookForDosedApart } from '../barn/dosed-apart.ts';
import { withReceived } from '../barn/memory.ts';
import { runRound } from '../barn/run-round.ts';
import { nothingTouched, type Touched } from '../store/receive-records.ts';

/**
 * Takes in what other kiosks told, on disk and in memory, and ends an offer that rests on what was changed by it. Belongs in
 * a transaction, which is taken back where this throws: `NotReceived` where a life does not follow what is held here, or what
 * the disk says.
 */
export function takeIn(barn: BarnContext, events: readonly Event[]): void {
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
  const before = barn.memory;
  barn.memory = withReceived(before, store, touched);
  // An offer of another animal rests on nothing that came.
  if (inVisit(barn, touched)) runRound(barn, { type: 'world-changed', what: 'rules' });
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
