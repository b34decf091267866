import fc from 'fast-check';
import { CAUTION_CODES } from '../../../core/dosing/cautions.ts';
import type { RoundEvent } from '../../../core/round/state.ts';
import type { KioskModel, Played } from './kiosk-model.ts';

/** One thing that may happen at the kiosk. It plays no event where the barn could not bring it about. */
export interface Command {
  readonly name: string;
  readonly run: (kiosk: KioskModel) => Played[];
}

const animal = fc.constantFrom(
  'anna',
  'bella',
  'cora',
  'dot',
  'fern',
  'gwen',
  'holly',
  'iris',
  'jill',
  'kit',
);

function simple(name: string, event: RoundEvent): fc.Arbitrary<Command> {
  return fc.constant({ name, run: (kiosk) => [kiosk.send(event)] });
}

const stepOn: Command = {
  name: 'step on',
  run: (kiosk) => {
    if (kiosk.onDeck || !kiosk.ready) return [];
    kiosk.onDeck = true;
    kiosk.heldThisVisit = new Set();
    return [kiosk.send({ type: 'stepped-on' })];
  },
};

const stepOff: Command = {
  name: 'step off',
  run: (kiosk) => {
    if (!kiosk.onDeck) return [];
    kiosk.onDeck = false;
    return [kiosk.send({ type: 'stepped-off' })];
  },
};

function holdOf(kg: number): Command {
  return {
    name: `hold ${kg} kg`,
    run: (kiosk) => {
      if (!kiosk.onDeck || !kiosk.ready) return [];
      const held = kiosk.hold(kg);
      kiosk.heldThisVisit.add(held);
      kiosk.blankSinceHeld = false;
      kiosk.acceptedSinceHeld = new Set();
      return [kiosk.send({ type: 'held', held })];
    },
  };
}

/** What usually happens: the last animal leaves, the next is read or named, steps on and is weighed. */
const wholeVisit = fc
  .record({ animalId: animal, via: fc.constantFrom('wand', 'screen'), kg: fc.constantFrom(30, 40, 41) })
  .map(
    ({ animalId, via, kg }): Command => ({
      name: `visit of ${animalId}`,
      run: (kiosk) => {
        const left = stepOff.run(kiosk);
        const known = kiosk.send({ type: 'identified', animalId, via });
        return [...left, known, ...stepOn.run(kiosk), ...holdOf(kg).run(kiosk)];
      },
    }),
  );

const acceptAll: Command = {
  name: 'accept what is asked',
  run: (kiosk) => {
    const { phase } = kiosk.round;
    if (phase.step !== 'cautions') return [];
    return phase.decision.cautions
      .filter(({ strength }) => strength === 'ask')
      .map(({ code }) => kiosk.send({ type: 'accept', code }));
  },
};

const nextMorning: Command = {
  name: 'next morning, with a fresh jug',
  run: (kiosk) => {
    kiosk.wait(25 * 3_600_000);
    while (kiosk.live().length > 0) kiosk.mixOrPour(false);
    kiosk.mixOrPour(true);
    const jugId = kiosk.live().at(-1)?.id ?? 'none';
    return [
      kiosk.send({ type: 'tick' }),
      kiosk.send({ type: 'world-changed', what: 'jugs' }),
      kiosk.send({ type: 'take-jug', jugId }),
      kiosk.send({ type: 'prove-jug', jugId, deliberate: false }),
    ];
  },
};

const hold = fc.constantFrom(4, 12, 30, 40, 41, 60, 90).map(holdOf);

const link = fc.constantFrom(true, true, false).map(
  (ready): Command => ({
    name: ready ? 'link ready' : 'link lost',
    run: (kiosk) => {
      kiosk.ready = ready;
      if (ready) return [];
      kiosk.onDeck = false;
      kiosk.blankSinceHeld = true;
      return [kiosk.send({ type: 'platform-blank' })];
    },
  }),
);

const give = fc.record({ old: fc.boolean(), outcome: fc.constantFrom('whole', 'part', 'spat-out') }).map(
  ({ old, outcome }): Command => ({
    name: old ? 'give an old offer' : 'give',
    run: (kiosk) => {
      const ids = [...kiosk.fates.keys()];
      const offerId = (old ? ids.at(0) : ids.at(-1)) ?? 'none';
      return [kiosk.send({ type: 'give', offerId, outcome })];
    },
  }),
);

const onDisk: Command = {
  name: 'on disk',
  run: (kiosk) => {
    const treatment = kiosk.treatments.at(-1);
    return treatment === undefined ? [] : [kiosk.send({ type: 'stored', treatment })];
  },
};

const answer = fc.boolean().map(
  (given): Command => ({
    name: given ? 'answer: given' : 'answer: not given',
    run: (kiosk) => {
      const offerId = kiosk.round.unanswered.at(0)?.id ?? 'none';
      return [kiosk.send({ type: 'answer', offerId, given })];
    },
  }),
);

const correct = fc.constantFrom('not-given', 'wrong-animal').map(
  (kind): Command => ({
    name: `correct: ${kind}`,
    run: (kiosk) => {
      const treatment = kiosk.treatments.at(-1);
      if (treatment === undefined) return [];
      const what = kind === 'not-given' ? ({ kind } as const) : ({ kind, animalId: 'bella' } as const);
      const id = `c-${kiosk.corrections.length}`;
      const correction = { id, treatmentId: treatment.id, what, atMs: 0, by: 'Kim' };
      kiosk.corrections.push(correction);
      return [kiosk.send({ type: 'corrected', correction })];
    },
  }),
);

const takeAndProve = fc.record({ newest: fc.boolean(), deliberate: fc.boolean() }).map(
  ({ newest, deliberate }): Command => ({
    name: `take and prove the ${newest ? 'newest' : 'oldest'} jug`,
    run: (kiosk) => {
      const jugId = kiosk.live().at(newest ? -1 : 0)?.id ?? 'none';
      return [kiosk.send({ type: 'take-jug', jugId }), kiosk.send({ type: 'prove-jug', jugId, deliberate })];
    },
  }),
);

const jugs = fc.boolean().map(
  (mix): Command => ({
    name: mix ? 'mix a jug' : 'pour a jug away',
    run: (kiosk) => {
      const live = kiosk.live().length;
      if (mix ? live > 2 : live === 0) return [];
      kiosk.mixOrPour(mix);
      return [kiosk.send({ type: 'world-changed', what: 'jugs' })];
    },
  }),
);

const shelf = fc.constantFrom(0, 0, 1, 2, 3).map(
  (index): Command => ({
    name: `shelf ${index}`,
    run: (kiosk) => {
      kiosk.shelf = index;
      return [kiosk.send({ type: 'world-changed', what: 'syringes' })];
    },
  }),
);

const wait = fc.record({ ms: fc.constantFrom(100, 5000, 25_000, 120_000, 610_000), ticks: fc.boolean() }).map(
  ({ ms, ticks }): Command => ({
    name: `wait ${ms} ms`,
    run: (kiosk) => {
      kiosk.wait(ms);
      return ticks ? [kiosk.send({ type: 'tick' })] : [];
    },
  }),
);

const named = fc.record({ animalId: animal, via: fc.constantFrom('wand', 'screen') }).map(
  ({ animalId, via }): Command => ({
    name: `${via}: ${animalId}`,
    run: (kiosk) => [kiosk.send({ type: 'identified', animalId, via })],
  }),
);

const acceptAny = fc
  .constantFrom(...CAUTION_CODES)
  .map(
    (code): Command => ({ name: `accept ${code}`, run: (kiosk) => [kiosk.send({ type: 'accept', code })] }),
  );

function weighted(weight: number, arbitrary: fc.Arbitrary<Command>) {
  return { weight, arbitrary };
}

/** A command, likelier the more often keepers do it. */
export const command: fc.Arbitrary<Command> = fc.oneof(
  weighted(14, wholeVisit),
  weighted(4, fc.constant(stepOn)),
  weighted(3, fc.constant(stepOff)),
  weighted(4, hold),
  weighted(5, named),
  weighted(2, acceptAny),
  weighted(10, fc.constant(acceptAll)),
  weighted(10, give),
  weighted(9, fc.constant(onDisk)),
  weighted(2, simple('skip', { type: 'skip', reason: 'later' })),
  weighted(8, answer),
  weighted(2, correct),
  weighted(3, simple('next', { type: 'next' })),
  weighted(4, takeAndProve),
  weighted(1, jugs),
  weighted(1, shelf),
  weighted(3, link),
  weighted(1, simple('put down', { type: 'put-jug-down' })),
  weighted(3, wait),
  weighted(3, fc.constant(nextMorning)),
);

/** A working day of at least three hundred things happening. */
export const day: fc.Arbitrary<Command[]> = fc.array(command, { minLength: 300, maxLength: 320 });
