import type { FactsView, PortView, ProposalView, SetupView } from '../../../shared/setup.ts';
import type { KioskState } from '../../../shared/state.ts';
import { BASE } from './base-state.ts';
import type { Scene } from './scene.ts';

/** The barn on real devices, with a set-up that stands so. */
export function settingUp(setup: SetupView, more: Partial<KioskState['shed']> = {}): KioskState {
  return { ...BASE, demo: false, shed: { ...BASE.shed, setup, ...more } };
}

function scene(name: string, setup: SetupView, taps: readonly string[] = [], role = 'platform'): Scene {
  return { name: `device-${name}`, place: `shed/devices/${role}`, state: settingUp(setup), taps };
}

const IDLE: SetupView = { step: 'idle' };
const PATH = '/dev/serial/by-id/usb-Example_Serial_Adapter_A50285BI-if00-port0';
const PORTS: readonly PortView[] = [
  {
    path: '/dev/serial/by-path/platform-xhci-usb-0:1.2:1.0',
    device: '/dev/ttyUSB1',
    usedBy: 'bench',
    fresh: false,
  },
  { path: PATH, device: '/dev/ttyUSB0', usedBy: null, fresh: true },
  {
    path: '/dev/serial/by-id/usb-Example_Wand_000418-if00',
    device: '/dev/ttyACM0',
    usedBy: null,
    fresh: false,
  },
];
const ASKED: ProposalView = {
  profile: 'sma',
  title: 'Polled, 20-byte replies (LF W CR)',
  baud: 9600,
  unit: 'kg',
  unitKnown: true,
  confidence: 0.8,
  sample: ' 1G        20.00kg ',
};
const BARE: ProposalView = {
  profile: 'stx-weight',
  title: 'Bare weight between STX and CR (W)',
  baud: 9600,
  unit: 'kg',
  unitKnown: false,
  confidence: 0.5,
  sample: '  44.10',
};
const WORDS: ProposalView = {
  profile: 'status-words',
  title: 'Continuous, 18 bytes with status words and checksum',
  baud: 115_200,
  unit: 'lb',
  unitKnown: true,
  confidence: 0.3,
  sample: '*0 002000000000\\r',
};
const SPEEDS: readonly ProposalView[] = [9600, 115_200, 19_200, 38_400, 57_600, 4800].map((baud) => ({
  profile: 'wand-line',
  title: 'A line for each tag',
  baud,
  unit: null,
  unitKnown: false,
  confidence: null,
  sample: '',
}));
const of = { role: 'platform', path: PATH } as const;
const NEEDS = { proof: false, noTare: false, otherFormat: false };

/** What the keeper may say of a scale whose last digit is worth so many grams. */
function factsOf(lastDigitGrams: number, more: Partial<FactsView> = {}): FactsView {
  return {
    capacityGrams: null,
    divisionGrams: null,
    by: null,
    valuesSeen: 1,
    choices: [1, 2, 5, 10, 20, 50, 100].map((lastDigits) => ({
      lastDigits,
      grams: lastDigits * lastDigitGrams,
      fits: true,
      likely: false,
    })),
    ...more,
  };
}
const UNKNOWN_STEPS = factsOf(10);
const BY_FIVES = factsOf(10, {
  valuesSeen: 8,
  choices: UNKNOWN_STEPS.choices.map((choice) => ({
    ...choice,
    fits: choice.lastDigits === 1 || choice.lastDigits === 5,
    likely: choice.lastDigits === 5,
  })),
});
const TOLD = factsOf(10, { capacityGrams: 150_000, divisionGrams: 50, by: 'scale' });
const CHOSEN = factsOf(10, { divisionGrams: 50, by: 'keeper' });

type Trial = Extract<SetupView, { step: 'trial' }>;

/** A platform scale on trial in kilograms, changed so. */
export function onTrial(changes: Partial<Trial> = {}): Trial {
  return {
    step: 'trial',
    ...of,
    proposals: [ASKED, BARE, WORDS],
    lines: false,
    index: 0,
    link: 'ready',
    live: 20_000,
    division: 10,
    still: true,
    net: false,
    tag: null,
    garbled: false,
    proof: null,
    facts: UNKNOWN_STEPS,
    needs: NEEDS,
    ...changes,
  };
}

const HEARD: ProposalView[] = SPEEDS.map((each, at) =>
  at === 0
    ? { ...each, baud: 19_200, sample: '982 000123456789' }
    : { ...each, baud: at === 2 ? 9600 : each.baud },
);
const PATTERNS: ProposalView[] = [
  ['STB', 'MOT'],
  ['MOT', 'STB'],
].map(([rest, moving], at) => ({
  profile: 'pattern',
  title: `At rest “${rest}”, moving “${moving}”`,
  baud: 9600,
  unit: 'kg',
  unitKnown: true,
  confidence: at === 0 ? 0.95 : 0.05,
  sample: 'STB;    20.00 kg',
}));

function onLines(changes: Partial<Extract<SetupView, { step: 'lines' }>>): SetupView {
  return {
    step: 'lines',
    ...of,
    baud: 9600,
    link: 'ready',
    lines: ['MOT;    19.80 kg', 'MOT;    20.45 kg', 'STB;    20.00 kg', 'MOT;    13.20 kg'],
    guesses: 0,
    ...changes,
  };
}

const proof = { knownGrams: 20_000, shownGrams: 20_000, is: null, instead: null } as const;
const bare = { index: 1, live: 44_100 };
const onWand = (changes: Partial<Trial>) =>
  onTrial({
    role: 'wand',
    proposals: [...SPEEDS],
    live: null,
    division: null,
    still: false,
    facts: null,
    ...changes,
  });

/** Every step of a device's set-up. */
export const SETUP_SCENES: readonly Scene[] = [
  { name: 'device-list', place: 'shed/devices', state: settingUp(IDLE) },
  {
    name: 'device-list-fixed',
    place: 'shed/devices',
    state: settingUp({ step: 'closed', why: 'set-by-environment' }),
  },
  { name: 'device-list-demo', place: 'shed/devices', state: BASE },
  scene('home', IDLE),
  {
    ...scene('home-unchecked', IDLE),
    state: settingUp(IDLE, {
      checks: { ...BASE.shed.checks, platform: { last: null, standing: 'never' } },
    }),
  },
  scene('home-trouble', IDLE, [], 'bench'),
  scene('home-none', IDLE, [], 'wand'),
  scene('ports', { step: 'ports', ports: [...PORTS] }),
  scene('ports-none', { step: 'ports', ports: [] }),
  scene('listening', { step: 'listening', ...of, asking: false, baud: 9600, done: 0, most: 14 }),
  scene('asking', { step: 'listening', ...of, asking: true, baud: 115_200, done: 12, most: 14 }),
  scene('failed', {
    step: 'failed',
    ...of,
    trouble: 'This user may not open the port: install the device rules, or join the group that owns it.',
  }),
  scene('proposals', { step: 'proposals', ...of, proposals: [ASKED, BARE, WORDS], lines: false }),
  scene('proposals-lines', { step: 'proposals', ...of, proposals: [ASKED, BARE, WORDS], lines: true }),
  scene('nothing', { step: 'proposals', ...of, proposals: [], lines: false }),
  scene('strange', { step: 'proposals', ...of, proposals: [], lines: true }),
  scene('lines', onLines({})),
  scene('lines-found', onLines({ guesses: 2 })),
  scene('patterns', { step: 'proposals', ...of, proposals: PATTERNS, lines: true }),
  scene('trial-waiting', onTrial({ link: 'settling', live: null, division: null, still: false })),
  scene(
    'trial-garbled',
    onTrial({ link: 'settling', live: null, division: null, still: false, garbled: true }),
  ),
  scene('trial', onTrial()),
  scene('trial-lb', onTrial({ index: 2, live: 68_084, division: 45.359237 })),
  scene('loads', onTrial(), ['trial-prove']),
  scene('loads-bench', onTrial({ role: 'bench' }), ['trial-prove'], 'bench'),
  scene('right', onTrial({ proof: { ...proof, verdict: 'right' }, facts: CHOSEN })),
  scene('right-told', onTrial({ proof: { ...proof, verdict: 'right' }, facts: TOLD })),
  scene('steps-asked', onTrial({ proof: { ...proof, verdict: 'right' } })),
  scene('steps', onTrial({ proof: { ...proof, verdict: 'right' } }), ['trial-steps']),
  scene('steps-seen', onTrial({ proof: { ...proof, verdict: 'right' }, facts: BY_FIVES }), ['trial-steps']),
  scene(
    'steps-seen-lb',
    onTrial({
      index: 2,
      live: 68_084,
      division: 45.359237,
      proof: { ...proof, verdict: 'right' },
      facts: factsOf(45.359237, { valuesSeen: 3 }),
    }),
    ['trial-steps'],
  ),
  scene(
    'pounds',
    onTrial({
      ...bare,
      proof: { ...proof, verdict: 'other-unit', shownGrams: 44_100, is: 'lb', instead: 3 },
      needs: { ...NEEDS, proof: true, noTare: true },
    }),
  ),
  scene(
    'pounds-named',
    onTrial({
      live: 44_100,
      proof: { ...proof, verdict: 'other-unit', shownGrams: 44_100, is: 'lb', instead: null },
      needs: { ...NEEDS, proof: true },
    }),
  ),
  scene(
    'never-still',
    onTrial({ proof: { ...proof, verdict: 'never-still', instead: 2 }, needs: { ...NEEDS, proof: true } }),
  ),
  scene(
    'wrong',
    onTrial({
      live: 31_200,
      proof: { ...proof, verdict: 'wrong', shownGrams: 31_200 },
      needs: { ...NEEDS, proof: true },
    }),
  ),
  scene('no-tare', onTrial({ proof: { ...proof, verdict: 'right' }, needs: { ...NEEDS, noTare: true } }), [
    'hold:device-no-tare',
  ]),
  scene('other-format', onTrial({ needs: { ...NEEDS, otherFormat: true } })),
  scene('trial-other', onTrial(), ['trial-other']),
  scene(
    'wand-speeds',
    { step: 'proposals', ...of, role: 'wand', proposals: [...SPEEDS], lines: false },
    [],
    'wand',
  ),
  scene(
    'wand-listening',
    { step: 'listening', ...of, role: 'wand', asking: false, baud: 9600, done: 0, most: 12 },
    [],
    'wand',
  ),
  scene('wand-heard', { step: 'proposals', ...of, role: 'wand', proposals: HEARD, lines: false }, [], 'wand'),
  scene('wand-wave', onWand({ needs: { ...NEEDS, proof: true } }), [], 'wand'),
  scene('wand-read', onWand({ tag: '982000123456789' }), [], 'wand'),
  {
    name: 'device-zero-platform',
    place: 'platform',
    state: {
      ...BASE,
      platform: { ...BASE.platform, verdict: 'not-zeroed', live: 700 },
      round: {
        step: 'visit',
        jugId: 'j7',
        animal: 'a1',
        weight: null,
        onDeck: false,
        likely: ['a1'],
        unanswered: [],
      },
    },
  },
];
