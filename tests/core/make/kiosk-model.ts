import type { EarlierDose } from '../../../core/dosing/repeats.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import type { Jug } from '../../../core/mixing/jug.ts';
import { HOUR_MS } from '../../../core/moment.ts';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { earlierDoses, pairUp } from '../../../core/round/day-book.ts';
import type { Offer } from '../../../core/round/offer.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import {
  FRESH_ROUND,
  type Round,
  type RoundEvent,
  type RoundStep,
  type RoundWorld,
} from '../../../core/round/state.ts';
import type { Correction, Treatment } from '../../../core/round/treatment.ts';
import type { Held } from '../../../core/weighing/settle.ts';
import { makeAnimal } from './animal.ts';
import { makeApproval } from './approval.ts';
import { makeJug } from './jug.ts';
import { HERD } from './round.ts';
import { CHECKED } from './scale-check.ts';
import { makeSyringe } from './syringe.ts';
import { NINE_OCLOCK, UP } from './time.ts';

/** What happened to an offer, as the model keeps account of it. */
export type Fate = 'standing' | 'stored' | 'skipped' | 'unanswered' | 'not-given';

const ANIMALS = [
  ...HERD,
  ...['fern', 'gwen', 'holly', 'iris', 'jill', 'kit'].map((id) => makeAnimal({ id, name: id, tag: null })),
];

const SHELVES = [
  [makeSyringe(1, 0.01), makeSyringe(6, 0.1), makeSyringe(12, 0.2)],
  [makeSyringe(12, 0.2), makeSyringe(20, 1)],
  [makeSyringe(60, 1)],
  [],
];

/** One event as it went into the reducer, with what came out. */
export interface Played {
  readonly event: RoundEvent;
  readonly world: RoundWorld;
  readonly before: Round;
  readonly step: RoundStep;
}

/**
 * The shell and the barn around the round, as simple as they can be: a day book, a platform that is stepped on and
 * off, jugs that are mixed and poured away. It keeps its own account of offers and proofs, never the reducer's.
 */
export class KioskModel {
  round: Round = FRESH_ROUND;
  /** Called after every event, before anything else happens. */
  look: (played: Played) => void = () => undefined;
  readonly fates = new Map<string, Fate>();
  readonly offers = new Map<string, Offer>();
  readonly treatments: Treatment[] = [];
  readonly corrections: Correction[] = [];
  jugs: Jug[] = [makeJug()];
  approvals = [makeApproval(), makeApproval({ regimenId: 'levamisole-sheep' })];
  shelf = 0;
  ready = true;
  clockTrusted = true;
  onDeck = false;
  /** Weights held since the last step-on, and whether the link has held since. */
  heldThisVisit = new Set<Held>();
  blankSinceHeld = false;
  acceptedSinceHeld = new Set<string>();
  proved: string | null = null;
  #uptime = UP;
  #serial = 0;
  #read: { written: number; earlier: EarlierDose[] } = { written: 0, earlier: [] };

  world(): RoundWorld {
    this.#serial += 1;
    const wallMs = NINE_OCLOCK + this.#uptime - UP;
    return {
      now: { uptimeMs: this.#uptime, wallMs },
      timeZone: 'UTC',
      formulary: SHIPPED,
      clockTrusted: this.clockTrusted,
      diskKeeps: true,
      animals: ANIMALS,
      jugs: this.jugs,
      approvals: this.approvals,
      syringes: SHELVES[this.shelf] ?? [],
      earlier: this.#book(),
      proven: [],
      scale: { ...CHECKED, last: { verdict: 'passed', atMs: wallMs, clockTrusted: true } },
      platformReady: this.ready,
      standing: null,
      onBench: 'bench-not-ready',
      by: 'Kim',
      freshId: `fresh-${this.#serial}`,
    };
  }

  /** The day book as the cautions see it, read anew only when something was written. */
  #book(): EarlierDose[] {
    const written = this.treatments.length + this.corrections.length;
    if (written !== this.#read.written) {
      this.#read = { written, earlier: earlierDoses(pairUp(this.treatments, this.corrections)) };
    }
    return this.#read.earlier;
  }

  /** Lets time pass. */
  wait(ms: number): void {
    this.#uptime += ms;
  }

  /** A weight as the deck would hold it now. */
  hold(kg: number): Held {
    return { mass: kilograms(kg), uncertainty: grams(60), at: this.#uptime, changedFrom: null };
  }

  /** The jugs not poured away, oldest first. */
  live(): Jug[] {
    return this.jugs.filter(({ discardedAtMs }) => discardedAtMs === null);
  }

  /** Mixes one more jug, or pours the newest away. */
  mixOrPour(mix: boolean): void {
    const number = this.jugs.length + 7;
    const nowMs = NINE_OCLOCK + this.#uptime - UP;
    this.jugs = mix
      ? [
          ...this.jugs,
          makeJug({
            id: `jug-${number}`,
            number,
            strength: mgPerMl(40),
            mixedAtMs: nowMs,
            useByMs: nowMs + 12 * HOUR_MS,
          }),
        ]
      : this.jugs.map((jug) => (jug === this.live().at(-1) ? { ...jug, discardedAtMs: nowMs } : jug));
  }

  /** Sends one event through the reducer and does what it says, as the shell would. */
  send(event: RoundEvent): Played {
    const world = this.world();
    const before = this.round;
    const step = reduceRound(before, event, world);
    this.#note(event, before, step);
    this.round = step.round;
    for (const effect of step.effects) if (effect.do === 'store') this.treatments.push(effect.treatment);
    const played = { event, world, before, step };
    this.look(played);
    return played;
  }

  #note(event: RoundEvent, before: Round, step: RoundStep): void {
    const standing = before.phase.step === 'offered' ? before.phase.offer.id : null;
    for (const effect of step.effects) {
      if (effect.do === 'store') this.fates.set(effect.treatment.offer.id, 'stored');
      if (effect.do === 'record-lapse') this.fates.set(effect.offer.id, 'unanswered');
      if (effect.do === 'record-not-given') this.fates.set(effect.offer.id, 'not-given');
      if (effect.do === 'record-skip' && standing !== null) this.fates.set(standing, 'skipped');
    }
    const { phase } = step.round;
    if (phase.step === 'offered' && !this.fates.has(phase.offer.id)) {
      this.fates.set(phase.offer.id, 'standing');
      this.offers.set(phase.offer.id, phase.offer);
    }
    if (step.refused !== null) return;
    if (event.type === 'take-jug' || event.type === 'put-jug-down') this.proved = null;
    if (event.type === 'prove-jug') this.proved = event.jugId;
    if (event.type === 'accept') this.acceptedSinceHeld.add(event.code);
  }
}
