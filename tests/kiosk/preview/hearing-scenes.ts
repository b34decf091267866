import { WAKE_WORDS } from '../../../core/speech/wake.ts';
import { refusedWords } from '../../../server/ear/heard-words.ts';
import { type EarView, USUAL_EAR } from '../../../shared/ear.ts';
import type { KioskState } from '../../../shared/state.ts';
import { BASE } from './base-state.ts';
import type { Scene } from './scene.ts';

/** What may be said on the platform, as examples. */
const PHRASES: EarView['phrases'] = [
  { group: 'animal', say: 'tag four one seven' },
  { group: 'animal', say: 'animal Old Bramble' },
  { group: 'score', say: 'eyelid score three' },
  { group: 'score', say: 'body score two point five' },
  { group: 'score', say: 'jaw is swollen' },
  { group: 'skip', say: 'skip would not take it' },
  { group: 'skip', say: 'skip not needed' },
  { group: 'screen', say: 'day book screen' },
  { group: 'screen', say: 'home screen' },
  { group: 'say-again', say: 'kiosk say again' },
];
const OFFERED: EarView['phrases'] = [
  { group: 'given', say: 'given … mils' },
  ...PHRASES.filter(({ group }) => group !== 'animal'),
];
const WAKE: EarView['phrases'] = [{ group: 'wake', say: WAKE_WORDS.join(' ') }, ...OFFERED];
const LEFT_OUT: EarView['leftOut'] = [
  { animal: 'Clover', why: 'shared' },
  { animal: 'Nettle', why: 'shared' },
  { animal: 'Old Bramble', why: 'not-2-to-4-digits' },
  { animal: 'Ægir 2', why: 'not-plain-letters' },
];
const HEARD = {
  done: { number: 2, words: 'eyelid score three', outcome: 'done', sentence: null },
  refused: {
    number: 2,
    words: 'given three point two mils',
    outcome: 'refused',
    sentence: refusedWords({ why: 'wrong-volume', saidMl: 3.2, shownMl: 3.3 }, 'en'),
  },
  unclear: { number: 2, words: '', outcome: 'not-understood', sentence: null },
} satisfies Record<string, NonNullable<EarView['heard']>>;

/** An ear that is ready, by the board's own microphone unless told otherwise. */
export function earWith(changes: Partial<EarView> = {}): EarView {
  return {
    ...USUAL_EAR,
    listening: 'waiting',
    open: false,
    source: 'board',
    trouble: null,
    phrases: PHRASES,
    leftOut: LEFT_OUT,
    heard: null,
    recordedBytes: 0,
    ...changes,
  };
}

/** The ear at work over scenes that stand already, and its screens at Shed. */
export function hearingScenes(known: readonly Scene[]): readonly Scene[] {
  const over = (base: string, name: string, ear: Partial<EarView> = {}, more: Partial<Scene> = {}): Scene => {
    const scene = known.find((each) => each.name === base);
    if (scene === undefined) throw new Error(`no scene is called ${base}`);
    return { ...scene, ...more, name, state: { ...scene.state, ear: earWith(ear) } };
  };
  const heard = (ear: Partial<EarView>): { later: Partial<KioskState> } => ({ later: { ear: earWith(ear) } });
  const shed = (
    name: string,
    place: string,
    ear: Partial<EarView> = {},
    more: Partial<Scene> = {},
  ): Scene => ({
    name,
    place: `shed/${place}`,
    state: { ...BASE, ear: earWith(ear) },
    ...more,
  });
  const offered = { phrases: OFFERED };
  return [
    over('home', 'ear-home'),
    over('home-no-jug', 'ear-home-no-demo'),
    over('offered', 'ear-offered', offered),
    over('offered', 'ear-offered-talking', { ...offered, open: true }, { taps: ['hold:talk'] }),
    over('offered', 'ear-offered-hearing', { ...offered, open: true, listening: 'hearing' }),
    over('offered', 'ear-offered-kiosk-speaks', { ...offered, listening: 'kiosk-speaking' }),
    over('offered', 'ear-offered-refused', offered, heard({ ...offered, heard: HEARD.refused })),
    over('offered', 'ear-offered-not-understood', offered, heard({ ...offered, heard: HEARD.unclear })),
    over('offered', 'ear-offered-recording', {
      ...offered,
      recording: true,
      mode: 'wake',
      phrases: WAKE,
    }),
    over('offered-unanswered', 'ear-offered-unanswered', offered),
    over('offered', 'ear-say', offered, { taps: ['ear-light'] }),
    over('visit-settling', 'ear-visit'),
    over('visit-who', 'ear-visit-who', {}, heard({ heard: HEARD.done })),
    over('visit-who', 'ear-left-out', {}, { taps: ['ear-light', 'left-out'] }),
    over('caution-ask', 'ear-caution'),
    over('caution-ask', 'ear-starting', { listening: 'starting' }),
    over('logged', 'ear-logged'),
    over('logged', 'ear-undo', {}, { place: 'platform/undo/t9' }),
    over('jug-pour-slow', 'ear-pour'),
    over('jug-powder', 'ear-powder', { trouble: 'engine-failing' }),
    over('jug-dilution', 'ear-dilution'),
    over('jug-pour-slow', 'ear-pour-blocked', { source: null, trouble: 'blocked', mode: 'wake' }),
    over(
      'jug-pour-slow',
      'ear-say-blocked',
      { source: null, trouble: 'blocked', mode: 'wake' },
      { taps: ['ear-light'] },
    ),
    shed('listening', 'listening'),
    shed('listening-off', 'listening', { mode: 'off', source: null, listening: 'off' }),
    shed('listening-no-engine', 'listening', { trouble: 'no-engine', source: null, listening: 'off' }),
    shed('footswitch', 'listening/foot'),
    shed('footswitch-learnt', 'listening/foot', { key: 'PageDown' }),
    shed('microphone-test', 'listening/microphone'),
    shed('try-out', 'listening/try'),
    shed('try-out-heard', 'listening/try', { heard: HEARD.done }),
    shed('try-out-refused', 'listening/try', { heard: HEARD.refused, mode: 'wake', phrases: WAKE }),
    shed('recording', 'listening/recording', { recordedBytes: 3_456_000 }),
    shed('recording-on', 'listening/recording', { recording: true }),
  ];
}
