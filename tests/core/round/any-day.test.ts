import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HOUR_MS } from '../../../core/moment.ts';
import { effectOf, pairUp } from '../../../core/round/day-book.ts';
import type { Offer } from '../../../core/round/offer.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import { type Command, day } from '../make/kiosk-commands.ts';
import { KioskModel, type Played } from '../make/kiosk-model.ts';

const RUNS = { numRuns: 300 };
/** Three hundred days take a while on a small board. */
const PATIENCE = { timeout: 120_000 };

/** Plays a day and looks at the kiosk after every event. */
function playDay(
  commands: readonly Command[],
  look: (kiosk: KioskModel, played: Played) => void,
): KioskModel {
  const kiosk = new KioskModel();
  kiosk.send({ type: 'take-jug', jugId: 'jug-7' });
  kiosk.send({ type: 'prove-jug', jugId: 'jug-7', deliberate: false });
  kiosk.look = (played) => look(kiosk, played);
  for (const command of commands) command.run(kiosk);
  return kiosk;
}

/** The offer an event brought up, if it did. */
function newOffer({ before, step }: Played): Offer | null {
  const { phase } = step.round;
  if (phase.step !== 'offered') return null;
  return before.phase.step === 'offered' && before.phase.offer.id === phase.offer.id ? null : phase.offer;
}

/** Checks every new offer of random days, and that there were offers to check. */
function everyOffer(check: (offer: Offer, kiosk: KioskModel, played: Played) => void): void {
  let seen = 0;
  fc.assert(
    fc.property(day, (commands) => {
      playDay(commands, (kiosk, played) => {
        const offer = newOffer(played);
        if (offer === null) return;
        seen += 1;
        check(offer, kiosk, played);
      });
    }),
    RUNS,
  );
  expect(seen).toBeGreaterThan(300);
}

describe('on any day, whatever happens in whatever order', PATIENCE, () => {
  test('no offer comes without an approved regimen for a known animal of its species', () => {
    everyOffer(({ regimen, animal }, _, { world }) => {
      expect(world.approvals.some(({ regimenId }) => regimenId === regimen.id)).toBe(true);
      expect(world.animals.map(({ id }) => id)).toContain(animal.id);
      expect(regimen.species).toBe(animal.species);
    });
  });

  test('no offer comes on a weight held before the last step-on, or older than ten minutes', () => {
    everyOffer(({ weight }, kiosk, { world }) => {
      expect(kiosk.heldThisVisit.has(weight.held)).toBe(true);
      expect(world.now.uptimeMs - weight.held.at).toBeLessThan(600_000);
    });
  });

  test('no offer comes while the platform is not ready', () => {
    everyOffer((_, __, { world }) => expect(world.platformReady).toBe(true));
  });

  test('no offer comes on a weight from before the link was last lost', () => {
    everyOffer((_, kiosk) => expect(kiosk.blankSinceHeld).toBe(false));
  });

  test('no offer comes from a jug that is not the one taken and proved, or not in life', () => {
    everyOffer(({ jug }, kiosk, { world }) => {
      expect(kiosk.proved).toBe(jug.id);
      expect(jug.discardedAtMs).toBeNull();
      expect(world.now.wallMs).toBeLessThan(jug.useByMs);
    });
  });

  test('no offer comes that a syringe on the shelf cannot measure', () => {
    everyOffer(({ dose }, _, { world }) => {
      const { syringe, draws, total } = dose.plan;
      expect(world.syringes.map(({ id }) => id)).toContain(syringe.id);
      expect(draws.every((draw) => draw.value <= syringe.capacity.value && draw.value > 0)).toBe(true);
      expect(draws.reduce((sum, draw) => sum + draw.value, 0)).toBeCloseTo(total.value, 9);
    });
  });

  test('no offer comes past a stop, or past an ask nobody accepted since the weight was held', () => {
    everyOffer(({ cautions }, kiosk) => {
      for (const { code, strength } of cautions) {
        expect(strength).not.toBe('stop');
        if (strength === 'ask') expect([...kiosk.acceptedSinceHeld]).toContain(code);
      }
    });
  });

  test('no offer comes for an animal that had the same medicine within a day', () => {
    everyOffer(({ animal, jug }, kiosk, { world }) => {
      for (const entry of pairUp(kiosk.treatments, kiosk.corrections)) {
        const { treatment } = entry;
        if (effectOf(entry).animalId !== animal.id || treatment.offer.jug.medicineId !== jug.medicineId)
          continue;
        expect(world.now.wallMs - treatment.givenAtMs).toBeGreaterThanOrEqual(24 * HOUR_MS);
      }
    });
  });

  test('one offer never yields two treatments', () => {
    fc.assert(
      fc.property(day, (commands) => {
        const { treatments } = playDay(commands, () => undefined);
        expect(new Set(treatments.map(({ offer }) => offer.id)).size).toBe(treatments.length);
        expect(new Set(treatments.map(({ id }) => id)).size).toBe(treatments.length);
      }),
      RUNS,
    );
  });

  test('every offer ends as exactly one of stored, skipped, not given, or still waits for its answer', () => {
    fc.assert(
      fc.property(day, (commands) => {
        const kiosk = playDay(commands, () => undefined);
        const waiting = kiosk.round.unanswered.map(({ id }) => id);
        const { phase } = kiosk.round;
        expect(new Set(waiting).size).toBe(waiting.length);
        for (const [id, fate] of kiosk.fates) {
          expect(waiting.includes(id)).toBe(fate === 'unanswered');
          if (fate === 'standing') expect(phase.step === 'offered' && phase.offer.id).toBe(id);
          expect(kiosk.treatments.some(({ offer }) => offer.id === id)).toBe(fate === 'stored');
        }
      }),
      RUNS,
    );
  });

  test('an offer that waits is the very offer that was shown', () => {
    fc.assert(
      fc.property(day, (commands) => {
        const kiosk = playDay(commands, () => undefined);
        for (const offer of kiosk.round.unanswered) expect(offer).toBe(kiosk.offers.get(offer.id));
        for (const { offer } of kiosk.treatments) expect(offer).toBe(kiosk.offers.get(offer.id));
      }),
      RUNS,
    );
  });
});

/** Freezes a value and all it holds, so that a change in place throws. */
function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const part of Object.values(value)) deepFreeze(part);
  }
  return value;
}

describe('the reducer', PATIENCE, () => {
  test('gives the same step for the same round, event and world, and changes none of them', () => {
    let events = 0;
    fc.assert(
      fc.property(day, (commands) => {
        playDay(commands, (_, { before, event, world, step }) => {
          const again = reduceRound(deepFreeze(before), deepFreeze(event), deepFreeze(world));
          expect(JSON.stringify(again)).toBe(JSON.stringify(step));
          events += 1;
        });
      }),
      { numRuns: 40 },
    );
    expect(events).toBeGreaterThan(5000);
  });

  test('changes nothing when it refuses, but for an offer found to have run out, which then waits', () => {
    let refusals = 0;
    fc.assert(
      fc.property(day, (commands) => {
        playDay(commands, (_, { before, step, world }) => {
          if (step.refused === null) return;
          refusals += 1;
          const standing = before.phase.step === 'offered' ? before.phase.offer : null;
          if (standing !== null && world.now.uptimeMs >= standing.expiresAtUptimeMs) return;
          expect(step.round).toBe(before);
          expect(step.effects).toEqual([]);
        });
      }),
      RUNS,
    );
    expect(refusals).toBeGreaterThan(300);
  });
});
