import { damagedProblem } from '../../../server/open-records.ts';
import type { KioskState } from '../../../shared/state.ts';
import { ANIMAL_SCENES } from './animal-scenes.ts';
import { BASE, JUG, OFFER, RIVAL, TWO_DRAWS, treatment } from './base-state.ts';
import { BOOK_AND_SHED_SCENES } from './book-and-shed-scenes.ts';
import { CHECK_SCENES } from './check-scenes.ts';
import { DOSE_CARD_SCENES } from './dose-card-scenes.ts';
import { FARM_SCENES } from './farm-scenes.ts';
import { FIRST_START_SCENES } from './first-start-scenes.ts';
import { GROUP_SCENES } from './group-scenes.ts';
import { hearingScenes } from './hearing-scenes.ts';
import { JUG_SCENES } from './jug-scenes.ts';
import { MEDICINE_SCENES } from './medicine-scenes.ts';
import { OWN_MEDICINE_SCENES } from './own-medicine-scenes.ts';
import { PHONE_SCENES } from './phone-scenes.ts';
import { practiceScenes } from './practice-scenes.ts';
import { PROOF_SCENES } from './proof-scenes.ts';
import type { Scene } from './scene.ts';
import { SEASON_SCENES } from './season-scenes.ts';
import { SETUP_SCENES } from './setup-scenes.ts';
import { STOCK_SCENES } from './stock-scenes.ts';
import { WORM_SCENES } from './worm-scenes.ts';

function at(changes: Partial<KioskState>): KioskState {
  return { ...BASE, ...changes };
}

const platform = BASE.platform;
const held = { grams: 13_603, uncertaintyGrams: 60, at: '2026-04-14T14:02:00Z' };
const likely = ['a1', 'a3', 'a2', 'a4', 'a7', 'a8'];
const visit = { jugId: 'j7', animal: null, weight: null, onDeck: true };
const loaded = (verdict: KioskState['platform']['verdict'], live = 13_620): Partial<KioskState> => ({
  platform: { ...platform, verdict, live },
});
const offered: Partial<KioskState> = {
  offer: OFFER,
  platform: { ...platform, verdict: 'empty', live: 0, held: 13_603, uncertainty: 60 },
  round: { step: 'offered', ...visit, animal: 'a1', weight: held, onDeck: false, unanswered: [] },
};
const cautions = (
  list: Extract<KioskState['round'], { step: 'cautions' }>['cautions'],
  accepted: string[] = [],
) =>
  at({
    ...loaded('held'),
    round: {
      step: 'cautions',
      ...visit,
      animal: 'a1',
      weight: held,
      cautions: list,
      accepted,
      unanswered: [],
    },
  });
const logged = (extra = {}): KioskState['round'] => ({
  step: 'logged',
  ...visit,
  animal: 'a1',
  weight: held,
  treatment: treatment('t9', { volumeMl: 3.3, ...extra }),
  after: null,
  followUps: [],
  undoUntil: '2026-04-14T14:05:00Z',
  unanswered: [],
});
const unplugged: Partial<KioskState> = {
  platform: { ...platform, link: 'lost', live: null, verdict: 'blank' },
};
const SILENT_SCENES: readonly Scene[] = [
  { name: 'home', place: 'home', state: at({ jugs: [JUG, RIVAL] }) },
  {
    name: 'home-disk-full',
    place: 'home',
    state: at({ demo: false, keeping: { ...BASE.keeping, disk: 'full' } }),
  },
  { name: 'home-no-jug', place: 'home', state: at({ jugs: [], dayBook: [], demo: false }) },
  { name: 'home-offer', place: 'home', state: at(offered) },
  { name: 'safety', place: 'home', state: at({ safetyRead: false }) },
  {
    name: 'problem',
    place: 'home',
    state: at({
      demo: false,
      problem: {
        code: 'config-invalid',
        file: 'data/kiosk.json',
        field: 'devices.platform.baud',
        detail: 'Expected a number, found the text "96oo".',
        remedy:
          'Write 9600 there, save the file, then start the kiosk again. No device is opened until then.',
      },
    }),
  },
  {
    name: 'problem-damaged',
    place: 'home',
    state: at({
      demo: false,
      problem: damagedProblem('/var/lib/byreside/byreside.sqlite', [
        'Tree 7 page 9: btreeInitPage() returns error code 11',
        'row 4 missing from index',
      ]),
    }),
  },
  { name: 'no-jug', place: 'platform', state: at({ jugs: [JUG, RIVAL] }) },
  { name: 'no-jug-none', place: 'platform', state: at({ jugs: [] }) },
  ...ANIMAL_SCENES,
  ...WORM_SCENES,
  ...PROOF_SCENES,
  {
    name: 'visit-empty',
    place: 'platform',
    state: at({ round: { step: 'visit', ...visit, likely, unanswered: [] } }),
  },
  {
    name: 'visit-settling',
    place: 'platform',
    state: at({
      ...loaded('settling', 24_700),
      round: { step: 'visit', ...visit, likely, unanswered: [OFFER] },
    }),
  },
  {
    name: 'visit-known',
    place: 'platform',
    state: at({
      ...loaded('stepping-on', 148_400),
      weightUnit: 'kg',
      round: { step: 'visit', ...visit, animal: 'a9', likely, unanswered: [] },
    }),
  },
  {
    name: 'visit-who',
    place: 'platform',
    state: at({
      ...loaded('held'),
      round: { step: 'visit', ...visit, weight: held, likely, unanswered: [] },
    }),
  },
  {
    name: 'visit-done',
    place: 'platform',
    state: at({
      ...loaded('held', 24_700),
      round: { step: 'visit', ...visit, onDeck: false, likely, unanswered: [] },
    }),
  },
  {
    name: 'visit-who-unanswered',
    place: 'platform',
    state: at({
      ...loaded('held'),
      round: { step: 'visit', ...visit, weight: held, likely, unanswered: [TWO_DRAWS] },
    }),
  },
  {
    name: 'visit-lost',
    place: 'platform',
    state: at({ ...unplugged, round: { step: 'visit', ...visit, likely, unanswered: [] } }),
  },
  {
    name: 'visit-net',
    place: 'platform',
    state: at({
      platform: { ...platform, verdict: 'not-zeroed', live: 1200 },
      round: { step: 'visit', ...visit, likely, unanswered: [] },
    }),
  },
  {
    name: 'which-animal',
    place: 'platform',
    state: at({
      ...loaded('held'),
      round: { step: 'which-animal', ...visit, weight: held, between: ['a1', 'a6'], unanswered: [] },
    }),
  },
  {
    name: 'caution-not-kept',
    place: 'platform',
    state: {
      ...cautions([{ code: 'not-kept', strength: 'stop', values: {} }]),
      demo: false,
      keeping: { ...BASE.keeping, disk: 'read-only' },
    },
  },
  {
    name: 'caution-stop',
    place: 'platform',
    state: cautions([
      {
        code: 'same-active-today',
        strength: 'stop',
        values: { lastGivenAtMs: Date.parse('2026-04-14T08:31:00Z') },
      },
    ]),
  },
  {
    name: 'caution-unknown-medicine',
    place: 'platform',
    state: cautions([
      {
        code: 'unknown-medicine-given',
        strength: 'ask',
        values: { lastGivenAtMs: Date.parse('2026-04-14T08:31:00Z') },
      },
    ]),
  },
  {
    name: 'caution-ask',
    place: 'platform',
    state: cautions(
      [
        { code: 'milk-time-unknown', strength: 'ask', values: {} },
        { code: 'interval-crosses-ceiling', strength: 'ask', values: { high: 18.4, ceiling: 18 } },
      ],
      ['milk-time-unknown'],
    ),
    taps: ['hold:accept-caution'],
  },
  {
    name: 'caution-weight',
    place: 'platform',
    state: cautions([
      { code: 'weight-pounds-for-kilograms', strength: 'ask', values: { grams: 13_603, lastGrams: 30_100 } },
    ]),
  },
  {
    name: 'caution-scale-unchecked',
    place: 'platform',
    state: cautions([
      {
        code: 'scale-unchecked',
        strength: 'ask',
        values: { lastAtMs: Date.parse('2026-02-20T09:00:00Z'), days: 30 },
      },
    ]),
  },
  {
    name: 'caution-scale-failed',
    place: 'platform',
    state: cautions([
      {
        code: 'scale-check-failed',
        strength: 'stop',
        values: { failedAtMs: Date.parse('2026-04-12T09:00:00Z') },
      },
    ]),
  },
  { name: 'offered', place: 'platform', state: at(offered) },
  { name: 'offered-hold', place: 'platform', state: at(offered), taps: ['hold:give'] },
  {
    name: 'offered-two-draws',
    place: 'platform',
    state: at({ ...offered, ...unplugged, offer: TWO_DRAWS }),
  },
  {
    name: 'offered-three-draws',
    place: 'platform',
    state: at({
      ...offered,
      offer: { ...TWO_DRAWS, volumeMl: 14, draws: 3, marksMl: [4.7, 4.7, 4.6], weightGrams: 87_100 },
    }),
  },
  {
    name: 'offered-unanswered',
    place: 'platform',
    state: at({
      ...offered,
      round: {
        step: 'offered',
        ...visit,
        animal: 'a1',
        weight: held,
        onDeck: false,
        unanswered: [{ ...TWO_DRAWS, id: 'o7' }],
      },
    }),
  },
  {
    name: 'offered-unanswered-two',
    place: 'platform',
    state: at({
      ...offered,
      ...unplugged,
      offer: { ...TWO_DRAWS, cautions: OFFER.cautions },
      round: {
        step: 'offered',
        ...visit,
        animal: 'a6',
        weight: held,
        onDeck: false,
        unanswered: [OFFER, TWO_DRAWS],
      },
    }),
  },
  { name: 'offered-skip', place: 'platform', state: at(offered), taps: ['skip'] },
  {
    name: 'offered-part',
    place: 'platform',
    state: at(offered),
    taps: ['other-outcome', 'part-open', 'left-less'],
  },
  { name: 'offered-other', place: 'platform', state: at(offered), taps: ['other-outcome'] },
  { name: 'offered-tray', place: 'platform', state: at(offered), taps: ['tray-open'] },
  {
    name: 'unanswered',
    place: 'platform',
    state: at({ round: { step: 'no-jug', unanswered: [TWO_DRAWS] } }),
    taps: ['unanswered'],
  },
  {
    name: 'logging',
    place: 'platform',
    state: at({
      ...offered,
      round: { step: 'logging', ...visit, animal: 'a1', weight: held, unanswered: [] },
    }),
  },
  { name: 'logged', place: 'platform', state: at({ round: logged() }) },
  {
    name: 'logged-unanswered',
    place: 'platform',
    state: at({
      round: {
        ...logged({ animalName: 'Old Bramble', milkClear: { kind: 'at', at: '2026-04-20T14:03:00Z' } }),
        unanswered: [OFFER],
      },
    }),
  },
  { name: 'undo', place: 'platform', state: at({ round: logged() }), taps: ['undo'] },
  {
    name: 'undo-animal',
    place: 'platform',
    state: at({ round: logged() }),
    taps: ['undo', 'correct-wrong-animal'],
  },
  {
    name: 'undo-volume',
    place: 'platform',
    state: at({ round: logged() }),
    taps: ['undo', 'correct-wrong-volume', 'volume-less'],
  },
  {
    name: 'undo-confirm',
    place: 'platform',
    state: at({ round: logged() }),
    taps: ['undo', 'correct-not-given'],
  },
  ...JUG_SCENES,
  ...GROUP_SCENES,
  ...BOOK_AND_SHED_SCENES,
  ...CHECK_SCENES,
  ...MEDICINE_SCENES,
  ...OWN_MEDICINE_SCENES,
  ...DOSE_CARD_SCENES,
  ...SETUP_SCENES,
  ...FIRST_START_SCENES,
  ...FARM_SCENES,
  ...STOCK_SCENES,
  ...SEASON_SCENES,
  ...PHONE_SCENES,
];

/** Every screen and step worth a look. */
export const SCENES: readonly Scene[] = [
  ...SILENT_SCENES,
  ...hearingScenes(SILENT_SCENES),
  ...practiceScenes(SILENT_SCENES),
];

/** The page on a device that is not the kiosk's own screen. */
export { ON_PHONE_SCENES } from './phone-scenes.ts';
