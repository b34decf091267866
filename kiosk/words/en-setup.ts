import type { ProofView, SetupView } from '../../shared/setup.ts';
import type { DeviceRole } from '../../shared/tray.ts';

type Closed = Extract<SetupView, { step: 'closed' }>['why'];
type Unit = NonNullable<ProofView['is']>;

/** English, for the setting up of devices. */
export const enSetup = {
  listTitle: 'Tap what you want to set up',
  deviceFacts: (profile: string, losses: number) => (losses === 0 ? profile : `${profile}, lost ${losses}×`),
  notSetUp: 'not set up',
  closed: {
    'not-in-demo': 'Simulated. The demo’s records stay in its own file.',
    'set-by-environment': 'Set by BYRESIDE_ variables of the start command: change them there.',
  } satisfies Record<Closed, string>,
  useReal: 'Hold: use real scales',
  title: {
    platform: 'Platform scale',
    bench: 'Bench scale',
    wand: 'Ear-tag wand',
  } satisfies Record<DeviceRole, string>,
  nothingYet: 'Nothing is set up here yet.',
  format: (profile: string, baud: number) => `Format ${profile}, ${baud} baud`,
  find: { platform: 'Find the scale', bench: 'Find the scale', wand: 'Find the wand' } satisfies Record<
    DeviceRole,
    string
  >,
  findAgain: 'Set up anew',
  checkNow: 'Check it now',
  remove: 'Hold: take out',
  portsTitle: 'Which plug is it?',
  portsHint: 'Plug it in now: the new one is marked.',
  noPorts: 'No plug is seen yet. Plug the adapter in now, and switch the scale on.',
  fresh: 'NEW',
  usedBy: (role: string) => `${role} has it`,
  otherPort: 'Other plug',
  stop: 'Stop',
  listening: 'Listening…',
  asking: 'Asking for a weight…',
  listenHint: 'Leave the scale switched on. Nothing in it is changed.',
  tries: (done: number, most: number, baud: number) => `Try ${done} of at most ${most}, at ${baud} baud`,
  failed: 'The port does not open',
  again: 'Try again',
  proposalsTitle: 'Which line fits?',
  speedTitle: 'How fast does the wand send?',
  proposal: (unit: string | null, baud: number) =>
    unit === null ? `${baud} baud` : `in ${unit}, ${baud} baud`,
  unitGuess: (unit: string) => `${unit}?`,
  fits: { well: 'fits well', partly: 'fits partly', little: 'fits a little' },
  usualSpeed: 'usual',
  baud: (baud: number) => `${baud}`,
  nothingTitle: 'It says nothing we know',
  nothingHints: [
    'Is the scale switched on, and is its cable home?',
    'Some scales need a crossed cable, or a key press to send.',
    'In the menu of the scale, set it to send continuously.',
  ],
  noneFits: 'None of these: show its lines',
  strangeTitle: 'It speaks, in no form we know',
  strangeHint: 'Its lines may still be read. Have a weight at hand that you can put on and take off.',
  showLines: 'Show its lines',
  linesTitle: 'This is what it sends',
  linesHint:
    'Put the weight on slowly, let it rest, and take it off again: what changes in the line tells motion.',
  linesFound: 'A way to read it is found.',
  readThem: 'Read it so',
  heardAt: 'heard',
  waveHint: 'Wave one tag again and again: each wave is tried at another speed.',
  readAs: (unit: string) => `read in ${unit}`,
  sameThere: 'Does the scale show the same?',
  waiting: 'Waiting for it to speak…',
  garbled: 'Something comes, but not in this format.',
  garbledWand: 'Something comes, but not at this speed.',
  quiet: 'It has stopped sending.',
  lost: 'The plug came out: push it home.',
  net: 'A tare is taken off: set it to gross.',
  wave: 'Wave a tag now',
  tagRead: 'Is this the number on the tag?',
  other: 'Other line',
  otherSpeed: 'Other speed',
  stepsAsk: 'In what steps?',
  stepsTitle: 'In what steps does it count?',
  stepsWhy: 'Unit and format fit. One thing more: how fine it counts.',
  stepsHint: (live: string) => `Press on it gently a few times: ${live}`,
  stepsSeen: 'It moves so',
  stepsNot: 'not so',
  stepsChosen: (step: string) => `Unit and format fit; it counts in ${step}.`,
  told: (capacity: string | null, step: string) =>
    capacity === null
      ? `It says that it counts in ${step}.`
      : `It says: up to ${capacity}, in steps of ${step}.`,
  facts: (capacity: string | null, step: string | null) =>
    `${step === null ? 'Steps not known' : `Counts in ${step}`}${capacity === null ? '' : `, up to ${capacity}`}`,
  prove: 'Prove it',
  keep: 'Keep',
  keepUnproved: 'Hold: keep unproved',
  loadTitle: 'What stands on the scale?',
  loadHint: (live: string) => `It shows ${live}`,
  load: (amount: number, unit: 'g' | 'kg' | 'lb' | 'L') =>
    unit === 'L' ? `Full ${amount} L bottle` : `${amount} ${unit}`,
  proof: {
    right: (shown: string) => `Right: ${shown}`,
    'other-unit': (shown: string) => `${shown}? Wrong unit`,
    'never-still': () => 'Right, but “moving”',
    wrong: (shown: string) => `Wrong: ${shown}`,
  } satisfies Record<ProofView['verdict'], (shown: string) => string>,
  proofMeans: {
    right: 'Unit and format fit. How exact it is: Shed, Check scale.',
    'other-unit': 'The number fits if it is read in another unit.',
    'never-still': 'It stands still, yet its line says that it moves.',
    wrong: 'Empty it and zero it, look at the weight, or take another line.',
  } satisfies Record<ProofView['verdict'], string>,
  setUnitThere: (unit: string) => `It seems to send ${unit} under another name: set the unit on the scale.`,
  readInstead: (unit: string) => `Read it in ${unit}`,
  turnMotion: 'Turn that round',
  unit: { kg: 'kg', g: 'g', lb: 'pounds', oz: 'ounces' } satisfies Record<Unit, string>,
  tareAsk: 'Its line does not tell gross from net. Does anybody ever press tare on it?',
  tareNever: 'Hold: never, it has no tare',
  otherFormat:
    'This line does not tell gross from net, so it cannot weigh animals. Set another format on the scale.',
};
