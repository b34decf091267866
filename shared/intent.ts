import { z } from 'zod';
import { CAUTION_CODES } from '../core/dosing/cautions.ts';
import { FIRST_STEPS } from '../core/first-start/first-start.ts';
import { EARCONS } from '../core/speech/earcon.ts';
import { AnimalClass, Species } from './animal.ts';
import { CheckedRole } from './check.ts';
import { EarSettings } from './ear.ts';
import { EGG_INTENTS } from './egg-count.ts';
import { FARM_INTENTS } from './farm.ts';
import { HERD_INTENTS } from './herd-intents.ts';
import { ScreenLanguage } from './language.ts';
import { MIXING_INTENTS } from './mixing-intents.ts';
import { NETWORK_INTENTS } from './network.ts';
import { OWN_MEDICINE_INTENTS } from './own-medicine.ts';
import { PRACTICE_INTENTS } from './practice.ts';
import { TEST_INTENTS } from './reduction-test.ts';
import { intentId as id, ref } from './refs.ts';
import { SEASON_INTENTS } from './season.ts';
import { SETTLING_INTENTS } from './settling.ts';
import { STOCK_INTENTS } from './stock.ts';
import { DeviceRole, TrayAction } from './tray.ts';
import { VoiceSettings } from './voice.ts';

/** Hours of a withdrawal as a veterinarian gave them; `null` keeps what the regimen ships with. */
const vetHours = z
  .number()
  .int()
  .min(0)
  .max(24 * 365)
  .nullable();

/** Days of a withdrawal as a veterinarian gave them. */
const vetDays = z.number().int().min(0).max(365).nullable().optional();

/** What really happened to a treatment that was logged. */
export const CorrectionKind = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('not-given') }),
  z.strictObject({ kind: z.literal('wrong-animal'), animalId: ref }),
  z.strictObject({ kind: z.literal('wrong-volume'), volumeMl: z.number().positive().max(1000) }),
  /** The veterinarian's time for this treatment, entered after it; days stand before hours. */
  z.strictObject({
    kind: z.literal('vet-time'),
    meatHours: vetHours,
    milkHours: vetHours,
    meatDays: vetHours,
    milkDays: vetHours,
  }),
]);
/** What really happened to a treatment that was logged. */
export type CorrectionKind = z.infer<typeof CorrectionKind>;

/**
 * Everything a person can want of the kiosk, whether by touch, voice, wand, footswitch or HTTP.
 *
 * Each carries an id of the sender's making and is handled once: the same id again gets the first answer.
 */
export const Intent = z.discriminatedUnion('type', [
  ...MIXING_INTENTS,

  z.strictObject({ type: z.literal('take-jug'), id, jugId: ref }),
  z.strictObject({ type: z.literal('prove-jug'), id, jugId: ref, deliberate: z.boolean() }),
  /** Proves the jug by what stands on the bench now. */
  z.strictObject({ type: z.literal('prove-on-bench'), id, jugId: ref }),
  z.strictObject({ type: z.literal('put-jug-down'), id }),
  /** More for the animal just dosed, by the same weight: an extra out of another jug, or the rest of a part dose. */
  z.strictObject({ type: z.literal('follow-up'), id, jugId: ref }),
  z.strictObject({ type: z.literal('read-tag'), id, tag: z.string().max(32) }),
  z.strictObject({ type: z.literal('pick-animal'), id, animalId: ref }),
  z.strictObject({ type: z.literal('accept'), id, code: z.enum(CAUTION_CODES) }),
  z.strictObject({
    type: z.literal('give'),
    id,
    offerId: ref,
    outcome: z.enum(['whole', 'part', 'spat-out']),
    /** What of a part dose is still in the syringe, by its marks. */
    leftMl: z.number().positive().max(1000).nullable().optional(),
  }),
  /** One animal of a group was given the group's dose. `animalIds` are all of the group, `volumeMl` is what was shown. */
  z.strictObject({
    type: z.literal('give-group'),
    id,
    jugId: ref,
    animalIds: z.array(ref).min(1).max(2000),
    animalId: ref,
    volumeMl: z.number().positive().max(1000),
    /** The asks of this animal that were accepted by a held press. */
    accepted: z.array(z.enum(CAUTION_CODES)),
  }),
  z.strictObject({
    type: z.literal('skip'),
    id,
    reason: z.enum(['not-needed', 'sick', 'refused', 'later', 'stopped']),
  }),
  z.strictObject({ type: z.literal('answer'), id, offerId: ref, given: z.boolean() }),
  z.strictObject({ type: z.literal('correct'), id, treatmentId: ref, what: CorrectionKind }),
  z.strictObject({ type: z.literal('next'), id }),

  z.strictObject({
    type: z.literal('enrol'),
    id,
    name: z.string().trim().min(1).max(24),
    species: Species,
    class: AnimalClass,
    tag: z.string().length(15).nullable(),
    inMilk: z.boolean(),
  }),
  ...HERD_INTENTS,
  ...STOCK_INTENTS,
  ...SEASON_INTENTS,
  ...EGG_INTENTS,
  ...TEST_INTENTS,
  z.strictObject({
    type: z.literal('approve'),
    id,
    regimenId: ref,
    direction: z.enum(['label', 'veterinarian']),
    meatHours: vetHours,
    milkHours: vetHours,
    /** Days the veterinarian gave, counted to the same time of day; they stand before the hours. */
    meatDays: vetDays,
    milkDays: vetDays,
    /** The rate the veterinarian gave, in mg/kg: only for a rule that ships without one. */
    targetMgPerKg: z.number().positive().max(1000).nullable().optional(),
    /** The veterinarian on whose word. */
    vet: z.string().trim().min(1).max(40).nullable().optional(),
  }),
  z.strictObject({ type: z.literal('withdraw-approval'), id, regimenId: ref }),
  ...OWN_MEDICINE_INTENTS,
  z.strictObject({ type: z.literal('set-syringes'), id, syringeIds: z.array(ref).max(32) }),
  z.strictObject({ type: z.literal('check-start'), id, role: CheckedRole }),
  z.strictObject({ type: z.literal('check-weight'), id, weightId: ref }),
  z.strictObject({ type: z.literal('check-next'), id }),
  z.strictObject({ type: z.literal('check-skip'), id }),
  z.strictObject({ type: z.literal('check-cancel'), id }),
  z.strictObject({
    type: z.literal('set-check-rule'),
    id,
    everyDays: z.number().int().min(1).max(365),
    stops: z.boolean(),
  }),
  z.strictObject({
    type: z.literal('syringe-check-start'),
    id,
    syringeId: ref,
    markMl: z.number().positive().max(1000),
    celsius: z.number().min(1).max(40),
  }),
  z.strictObject({ type: z.literal('syringe-check-next'), id }),
  z.strictObject({ type: z.literal('syringe-check-leave-out'), id }),
  z.strictObject({ type: z.literal('syringe-check-cancel'), id }),
  /** Takes back what the last check of a syringe found: it counts as its catalogue says again. */
  z.strictObject({ type: z.literal('syringe-check-forget'), id, syringeId: ref }),
  /** Lists the ports a device may be plugged into, and looks again until something else is asked. */
  z.strictObject({ type: z.literal('ports-look'), id }),
  /** Finds out what is plugged in at a port. The port must not be another role's. */
  z.strictObject({
    type: z.literal('device-listen'),
    id,
    role: DeviceRole,
    path: z.string().startsWith('/').max(400),
  }),
  /** Opens one of the proposals on trial: its value is shown, nothing weighs or doses from it. */
  z.strictObject({
    type: z.literal('device-try'),
    id,
    role: DeviceRole,
    index: z.number().int().min(0).max(99),
  }),
  /** Shows the lines of a scale that no proposal fits, and looks for expressions that may read them. */
  z.strictObject({ type: z.literal('device-lines'), id }),
  /** Proposes the expressions found for the lines shown. */
  z.strictObject({ type: z.literal('device-patterns'), id }),
  /** Compares what the scale on trial shows with the known weight that stands on it. */
  z.strictObject({ type: z.literal('device-prove'), id, loadId: ref }),
  /** The keeper's word that nobody ever takes a tare on the scale on trial. */
  z.strictObject({ type: z.literal('device-no-tare'), id }),
  /** The keeper's word in which steps the scale on trial counts, in the last digit it shows. */
  z.strictObject({ type: z.literal('device-division'), id, lastDigits: z.number().int().min(1).max(100) }),
  /** Keeps the device on trial. */
  z.strictObject({ type: z.literal('device-keep'), id }),
  /** Ends a set-up; what was configured before goes on. */
  z.strictObject({ type: z.literal('device-drop'), id }),
  /** Takes a device out of the configuration. */
  z.strictObject({ type: z.literal('device-remove'), id, role: DeviceRole }),
  /** Asks an empty scale to take what it shows for zero. */
  z.strictObject({ type: z.literal('zero'), id, role: z.enum(['platform', 'bench']) }),
  /** A person's word on what the time is, as the farm's clocks show it: it dates what was written since the board started. */
  z.strictObject({
    type: z.literal('set-clock'),
    id,
    at: z.iso.datetime({ local: true, precision: -1 }),
  }),
  z.strictObject({ type: z.literal('set-person'), id, name: z.string().trim().min(1).max(24) }),
  ...SETTLING_INTENTS,
  ...PRACTICE_INTENTS,
  z.strictObject({ type: z.literal('set-face'), id, face: z.enum(['dim', 'glare']) }),
  /** The language of the screen; the voice follows it, and may be set to another afterwards. */
  z.strictObject({ type: z.literal('set-language'), id, language: ScreenLanguage }),
  z.strictObject({ type: z.literal('set-weight-unit'), id, unit: z.enum(['kg', 'lb']) }),
  /** What labels and tables are printed on from here on. */
  z.strictObject({ type: z.literal('set-paper'), id, paper: z.enum(['a6', 'roll']) }),
  z.strictObject({ type: z.literal('safety-read'), id }),
  /** Goes on from a step of the first start, whether it was answered or not; or back, or ends it. */
  z.strictObject({
    type: z.literal('first-start'),
    id,
    step: z.enum(FIRST_STEPS),
    move: z.enum(['next', 'back', 'end']),
  }),
  /** Keeps how the kiosk speaks. */
  z.strictObject({ type: z.literal('set-voice'), id, voice: VoiceSettings }),
  /** Keeps when the kiosk hears. */
  z.strictObject({ type: z.literal('set-ear'), id, ear: EarSettings }),
  /** Wipes the sound that was recorded to find out why the kiosk mishears. */
  z.strictObject({ type: z.literal('wipe-recordings'), id }),
  /** Says a dose, so that the voice can be judged; or one of the sounds. */
  z.strictObject({ type: z.literal('try-voice'), id, earcon: z.enum(EARCONS).nullable() }),

  z.strictObject({ type: z.literal('tray'), id, action: TrayAction }),
  /** Ends the demo: the kiosk starts anew on real devices, with a database of its own. */
  z.strictObject({ type: z.literal('leave-demo'), id }),
  z.strictObject({ type: z.literal('back-up-now'), id }),
  ...NETWORK_INTENTS,
  ...FARM_INTENTS,
]);
/** One intent. */
export type Intent = z.infer<typeof Intent>;

/** Why an intent was not carried out. */
export const REFUSALS = [
  'unknown-intent',
  'bad-input',
  'wrong-state',
  'id-reused',
  'no-such-jug',
  'jug-out-of-life',
  'not-this-jug',
  'not-an-extra',
  'more-than-drawn',
  'jug-not-in-hand',
  'ask-open',
  'group-changed',
  'needs-held-press',
  'no-such-animal',
  'no-such-tag',
  'lost-tag',
  'tag-refused',
  'tag-in-use',
  'name-in-use',
  'animal-gone',
  'not-one-animal',
  'merge-undecided',
  'not-merged',
  'in-round',
  'both-in-test',
  'females-only',
  'not-in-milk',
  'day-in-future',
  'day-too-long-ago',
  'before-birth',
  'same-tag',
  'photo-too-large',
  'not-a-photo',
  'no-such-photo',
  'no-such-weighing',
  'nothing-scored',
  'no-such-score',
  'not-scored-so',
  'threshold-out-of-range',
  'no-such-file',
  'file-too-large',
  'no-such-preview',
  'preview-outdated',
  'nothing-to-take-in',
  'no-such-caution',
  'cannot-pass-stop',
  'offer-ended',
  'platform-not-ready',
  'no-such-packet',
  'no-such-lot',
  'lot-expired',
  'more-than-on-hand',
  'no-such-bottle',
  'bottle-expired',
  'temperature-out-of-range',
  'bench-not-ready',
  'bench-moving',
  'no-jug-on-scale',
  'scale-too-coarse',
  'too-little-water',
  'tared-mid-way',
  'no-such-amount',
  'stronger-than-known',
  'far-from-label',
  'too-weak',
  'holds-mix',
  'no-such-vessel',
  'needs-held-word',
  'far-too-much-water',
  'jug-not-back',
  'no-powder-seen',
  'powder-far-off',
  'jug-weight-unknown',
  'jug-weighs-otherwise',
  'jugs-weigh-alike',
  'no-such-weight',
  'weight-too-light',
  'scale-not-ready',
  'scale-moving',
  'scale-tared',
  'not-at-zero',
  'nothing-on-scale',
  'weight-still-on',
  'bench-in-use',
  'no-such-mark',
  'too-coarse-for-syringe',
  'nothing-delivered',
  'more-than-one-delivery',
  'not-checked',
  'no-such-count',
  'no-such-test',
  'test-ended',
  'not-in-test',
  'already-counted',
  'one-animal-a-sample',
  'other-factor',
  'not-whole-dose',
  'needs-untreated',
  'already-in-test',
  'no-such-treatment',
  'already-corrected',
  'no-such-regimen',
  'needs-veterinarian',
  'needs-rate',
  'rate-not-needed',
  'no-such-medicine',
  'contradicts-itself',
  'already-there',
  'medicines-unreadable',
  'not-our-own',
  'still-approved',
  'still-in-service',
  'no-such-syringe',
  'no-such-person',
  'person-known',
  'too-many-people',
  'last-person',
  'no-such-panel',
  'no-such-zone',
  'time-before-program',
  'time-not-kept',
  'server-knows-time',
  'demo-only',
  'not-in-demo',
  'only-for-real',
  'work-waits',
  'set-by-environment',
  'port-in-use',
  'no-such-proposal',
  'no-such-division',
  'no-plain-lines',
  'no-pattern-yet',
  'not-proved',
  'tare-word-needed',
  'bench-only',
  'no-zero-command',
  'something-on-scale',
  'no-backup-place',
  'no-invitation',
  'no-such-alarm',
  'follows-only',
  'not-paired',
  'needs-pin',
  'needs-set-up',
  'board-only',
  'network-off',
  'network-set-by-file',
  'access-unreadable',
  'too-many-devices',
  'no-such-device',
  'not-configured',
  'not-written',
] as const;
/** One of {@link REFUSALS}. */
export type Refusal = (typeof REFUSALS)[number];

/** The answer to an intent. `repeated` says that its id was handled before and nothing was done again. */
export const Answer = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), id: z.string(), repeated: z.boolean() }),
  z.strictObject({
    ok: z.literal(false),
    id: z.string().nullable(),
    repeated: z.boolean(),
    code: z.enum(REFUSALS),
    /** What is wrong and what to do about it, in one or two plain sentences. */
    message: z.string(),
  }),
]);
/** The answer to an intent. */
export type Answer = z.infer<typeof Answer>;
