import type { EarView } from '../../shared/ear.ts';
import type { MicrophoneState } from './microphone.ts';

/** Why the ear is of no use now, as far as a keeper can do something about it. */
export type Trouble = Exclude<EarView['trouble'], null | 'no-engine'> | 'busy' | 'untouched';

/** What the light of the ear shows; each has a shape of its own. */
export type Light =
  | 'starting'
  | 'waiting'
  | 'open'
  | 'hearing'
  | 'kiosk-speaking'
  | 'done'
  | 'refused'
  | 'not-understood'
  | 'trouble';

/** What is heard of, for as long as it is shown. */
export type Heard = NonNullable<EarView['heard']>;

/** Whether there is an ear at all: it is not set off, and the machine has an engine to hear with. */
export function hasEar({ mode, trouble }: Pick<EarView, 'mode' | 'trouble'>): boolean {
  return mode !== 'off' && trouble !== 'no-engine';
}

/** What keeps it from hearing: this page's own microphone knows best, unless the page is not the one that listens. */
export function troubleOf(ear: EarView, microphone: MicrophoneState, own: boolean): Trouble | null {
  if (ear.trouble === 'engine-failing' || ear.trouble === 'bad-sound') return ear.trouble;
  if (ear.source === 'board' || ear.trouble === 'no-engine') return null;
  return own ? microphoneTrouble(microphone) : ear.trouble;
}

/** What ails a page's microphone; one that is closed opens with the first press to talk. */
export function microphoneTrouble(microphone: MicrophoneState): Trouble | null {
  switch (microphone) {
    case 'blocked':
    case 'busy':
    case 'untouched':
      return microphone;
    case 'none':
      return 'no-microphone';
    case 'far':
      return 'page-far';
    case 'closed':
    case 'opening':
    case 'open':
      return null;
  }
}

/** What the light shows: trouble first, then what happens now, then what was last heard. */
export function lightOf(
  ear: EarView,
  { trouble, opening, heard }: { trouble: Trouble | null; opening: boolean; heard: Heard | null },
): Light {
  if (trouble !== null) return 'trouble';
  if (opening) return 'starting';
  if (ear.listening === 'kiosk-speaking' || ear.listening === 'hearing') return ear.listening;
  if (heard !== null) return heard.outcome;
  if (ear.listening === 'starting') return 'starting';
  return ear.open ? 'open' : 'waiting';
}
