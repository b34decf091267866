import { describe, expect, test } from 'vitest';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { mgPerMl } from '../../../core/quantity/strength.ts';
import { millilitres } from '../../../core/quantity/volume.ts';
import { earlierDoses, pairUp } from '../../../core/round/day-book.ts';
import { reduceRound } from '../../../core/round/reduce.ts';
import type { Round, RoundEvent, RoundWorld } from '../../../core/round/state.ts';
import type { Treatment } from '../../../core/round/treatment.ts';
import { weighingEnded } from '../../../core/round/weighed.ts';
import { makeApproval } from '../make/approval.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { farm, offerOf, phaseAt, play, storedBy, tile, wand } from '../make/round.ts';
import { roundAt } from '../make/round-states.ts';
import { UP } from '../make/time.ts';

const BOTTLE = makeJug({
  id: 'bottle-9',
  number: 9,
  medicineId: 'thiamine',
  packetId: 'own',
  strength: mgPerMl(200),
});
const RIVAL = makeJug({ ...BOTTLE, id: 'bottle-10', number: 10 });
const BENZIMIDAZOLE = makeJug({ id: 'bottle-11', medicineId: 'fenbendazole', packetId: 'fenbendazole-100' });
const APPROVALS = [
  makeApproval(),
  makeApproval({ regimenId: 'thiamine-goat', targetMgPerKg: 10, figures: null }),
];

/** The farm with a bottle of thiamine beside the jug, a second after the dose. */
function beside(ms = 1000, over: Partial<RoundWorld> = {}): RoundWorld {
  return farm(ms, { jugs: [makeJug(), BOTTLE, BENZIMIDAZOLE], approvals: APPROVALS, ...over });
}

const FOLLOW: RoundEvent = { type: 'follow-up', jugId: 'bottle-9' };
const PROVE: RoundEvent = { type: 'prove-jug', jugId: 'bottle-9', deliberate: false };
const taken = (): Round => play(roundAt('logged'), [FOLLOW], () => beside());
const offered = (): Round => play(taken(), [PROVE], () => beside());

describe('an extra in the same visit', () => {
  test('is offered by the same weight once its bottle is proved', () => {
    expect(phaseAt(taken(), 'prove-jug').jugId).toBe('bottle-9');
    const offer = offerOf(offered());
    const drench = phaseAt(roundAt('logged'), 'logged').treatment.offer;
    expect(offer.weight).toEqual(drench.weight);
    expect(offer.animal.id).toBe('anna');
    expect(offer.jug.id).toBe('bottle-9');
    // 40 kg at 10 mg/kg of 200 mg/mL.
    expect(offer.dose.plan.total.value).toBe(2);
  });

  test('given, leads back to the round’s own jug, which is proved again', () => {
    const given = reduceRound(
      offered(),
      { type: 'give', offerId: offerOf(offered()).id, outcome: 'whole' },
      beside(2000),
    );
    const [treatment] = storedBy([given]);
    if (treatment === undefined) throw new Error('nothing was stored');
    const after = play(given.round, [{ type: 'stored', treatment }, { type: 'next' }], (ms) =>
      beside(3000 + ms),
    );
    expect(after.phase).toEqual({ step: 'prove-jug', jugId: 'jug-7', visit: null });
    expect(after).toMatchObject({ proof: null, backTo: null });
  });

  test.each<[string, RoundEvent]>([
    ['another animal steps on', { type: 'stepped-on' }],
    ['the platform goes blank', { type: 'platform-blank' }],
  ])('is given up where %s before the bottle is proved', (_, event) => {
    expect(play(taken(), [event], () => beside()).phase).toEqual({
      step: 'prove-jug',
      jugId: 'jug-7',
      visit: null,
    });
  });

  test('is given up where another tag is read before the bottle is proved', () => {
    const step = reduceRound(taken(), wand('bella'), beside());
    expect(step.refused).toBe('wrong-state');
    expect(step.round.phase).toEqual({ step: 'prove-jug', jugId: 'jug-7', visit: null });
    expect(reduceRound(taken(), wand('anna'), beside()).round).toEqual(taken());
  });

  test('is never drawn for the animal that comes next', () => {
    for (const round of [offered(), play(offered(), [{ type: 'skip', reason: 'later' }], () => beside())]) {
      const next = play(round, [{ type: 'stepped-on' }], () => beside());
      expect(next.phase).toMatchObject({ step: 'prove-jug', jugId: 'jug-7' });
    }
    const lapsed = reduceRound(offered(), { type: 'stepped-on' }, beside());
    expect(lapsed.effects).toMatchObject([{ do: 'record-lapse', reason: 'new-animal' }]);
    expect(lapsed.round.unanswered).toHaveLength(1);
  });

  test('the animal that waits on the platform keeps its weight while the jug is proved again', () => {
    const back = play(offered(), [{ type: 'stepped-on' }], () => beside());
    const weight = { held: makeHeld(31), atMs: 0 };
    const proved = play(back, [{ type: 'prove-jug', jugId: 'jug-7', deliberate: false }], () =>
      beside(2000, { standing: { weight } }),
    );
    expect(phaseAt(proved, 'visit').visit).toMatchObject({ who: null, weight });
  });

  test('wants the held press where two of its bottles are in use', () => {
    const world = (): RoundWorld => beside(1000, { jugs: [makeJug(), BOTTLE, RIVAL] });
    const round = play(roundAt('logged'), [FOLLOW], world);
    expect(reduceRound(round, PROVE, world()).refused).toBe('needs-held-press');
    expect(play(round, [{ ...PROVE, deliberate: true } as RoundEvent], world).phase.step).toBe('offered');
  });

  test('with a weight past its life is not offered', () => {
    const late = play(taken(), [PROVE], () => beside(11 * 60_000));
    expect(phaseAt(late, 'visit').visit.weight).toBeNull();
  });

  test('its rule not approved stops, and skipping leads back', () => {
    const unapproved = (): RoundWorld => beside(1000, { approvals: [makeApproval()] });
    const stopped = play(taken(), [PROVE], unapproved);
    expect(phaseAt(stopped, 'cautions').decision.cautions[0]?.code).toBe('not-approved');
    expect(play(stopped, [{ type: 'skip', reason: 'later' }], unapproved).phase).toMatchObject({
      jugId: 'jug-7',
    });
  });

  test('what is no extra of the medicine is refused, and so is what is not there', () => {
    const from = roundAt('logged');
    const refused = (jugId: string) => reduceRound(from, { type: 'follow-up', jugId }, beside()).refused;
    expect(refused('bottle-11')).toBe('not-an-extra');
    expect(refused('no-such')).toBe('no-such-jug');
    const poured = makeJug({ ...BOTTLE, discardedAtMs: 1 });
    expect(reduceRound(from, FOLLOW, beside(1000, { jugs: [makeJug(), poured] })).refused).toBe(
      'jug-out-of-life',
    );
  });

  test('the weight that a dose went by is not written once more when the extra is skipped', () => {
    const skipped = reduceRound(offered(), { type: 'skip', reason: 'later' }, beside());
    expect(weighingEnded(offered(), skipped.round)).toBeNull();
    // One held anew in the visit is.
    const again = play(offered(), [{ type: 'held', held: makeHeld(41, { at: UP + 1000 }) }], () => beside());
    const left = reduceRound(again, { type: 'skip', reason: 'later' }, beside());
    expect(weighingEnded(again, left.round)).toMatchObject({ animalId: 'anna' });
  });

  test('a jug poured away meanwhile cannot be proved again', () => {
    const back = play(offered(), [{ type: 'stepped-on' }], () => beside());
    const gone = beside(2000, { jugs: [makeJug({ discardedAtMs: 1 }), BOTTLE] });
    expect(reduceRound(back, { type: 'prove-jug', jugId: 'jug-7', deliberate: false }, gone).refused).toBe(
      'jug-out-of-life',
    );
  });
});

describe('part of a dose', () => {
  const drench = roundAt('offered');
  const offer = offerOf(drench);
  const give = (left: number | null, outcome: 'whole' | 'part' | 'spat-out' = 'part', round = drench) =>
    reduceRound(
      round,
      { type: 'give', offerId: offerOf(round).id, outcome, left: left === null ? null : millilitres(left) },
      farm(100),
    );
  const given = (left: number | null, outcome: 'part' | 'spat-out' = 'part'): Treatment => {
    const [treatment] = storedBy([give(left, outcome)]);
    if (treatment === undefined) throw new Error('nothing was stored');
    return treatment;
  };

  test('keeps what was still in the syringe', () => {
    expect(given(4).left).toEqual(millilitres(4));
    expect(given(null).left).toBeNull();
    expect(given(null, 'spat-out').left).toBeNull();
  });

  test.each([
    ['as much as was drawn', 'part', offer.dose.plan.total.value],
    ['more than was drawn', 'part', 2 * offer.dose.plan.total.value],
    ['a rest of a whole dose', 'whole', 1],
    ['a rest of what was spat out', 'spat-out', 1],
  ] as const)('%s is refused, and the offer stands', (_, outcome, left) => {
    const step = give(left, outcome);
    expect(step.refused).toBe('more-than-drawn');
    expect(step.round).toEqual(drench);
  });

  test('its rest is what the syringe held, until a correction says otherwise', () => {
    const treatment = given(4);
    const rest = (what?: Parameters<typeof pairUp>[1][number]['what']) =>
      earlierDoses(
        pairUp(
          [treatment],
          what === undefined ? [] : [{ id: 'c', treatmentId: treatment.id, what, atMs: 0, by: 'K' }],
        ),
      )[0]?.rest;
    expect(rest()?.active.value).toBeCloseTo(4 * offer.jug.strength.value, 9);
    expect(rest({ kind: 'wrong-animal', animalId: 'bella' })).toBeNull();
    expect(rest({ kind: 'wrong-volume', volumeMl: 3 })).toBeNull();
    expect(rest({ kind: 'vet-time', meat: null, milk: null })).not.toBeNull();
  });

  const topUps = SHIPPED.map((medicine) => ({
    ...medicine,
    regimens: medicine.regimens.map((regimen) => ({ ...regimen, topUp: true })),
  }));

  test('may be topped up in the same visit where the rule says so, no more than once', () => {
    const world =
      (treatments: readonly Treatment[]) =>
      (ms: number): RoundWorld =>
        farm(200 + ms, {
          formulary: topUps,
          approvals: [makeApproval({ figures: null })],
          earlier: earlierDoses(pairUp(treatments, [])),
        });
    const allowed = play(roundAt('visit: weight only'), [tile('anna')], world([]));
    const step = give(4, 'part', allowed);
    const [first] = storedBy([step]);
    if (first === undefined) throw new Error('nothing was stored');
    const SAME: RoundEvent = { type: 'follow-up', jugId: 'jug-7' };
    const rest = play(
      step.round,
      [{ type: 'stored', treatment: first }, SAME, { type: 'accept', code: 'top-up' }],
      world([first]),
    );
    expect(offerOf(rest).dose.plan.total.value).toBe(4);
    const second = reduceRound(
      rest,
      { type: 'give', offerId: offerOf(rest).id, outcome: 'whole' },
      world([first])(50),
    );
    const [topUp] = storedBy([second]);
    if (topUp === undefined) throw new Error('nothing was stored');
    const again = play(second.round, [{ type: 'stored', treatment: topUp }, SAME], world([first, topUp]));
    expect(phaseAt(again, 'cautions').decision.cautions[0]).toMatchObject({
      code: 'same-active-today',
      strength: 'stop',
    });
  });

  test('under a rule as it ships a second dose in the visit stops', () => {
    const step = give(4);
    const [treatment] = storedBy([step]);
    if (treatment === undefined) throw new Error('nothing was stored');
    const earlier = earlierDoses(pairUp([treatment], []));
    const round = play(
      step.round,
      [
        { type: 'stored', treatment },
        { type: 'follow-up', jugId: 'jug-7' },
      ],
      (ms) => farm(200 + ms, { earlier }),
    );
    expect(phaseAt(round, 'cautions').decision.cautions[0]).toMatchObject({
      code: 'same-active-today',
      strength: 'stop',
    });
  });
});

describe('how the jug was proved', () => {
  test('and what was told with it go into the offer', () => {
    const { proof } = offerOf(roundAt('offered'));
    expect(proof).toEqual({
      how: 'tap',
      atMs: farm(1).now.wallMs,
      told: [{ code: 'conflict-window', strength: 'note', values: { days: 14 } }],
    });
  });

  test('is forgotten when the jug is put down or taken anew', () => {
    for (const event of [{ type: 'put-jug-down' }, { type: 'take-jug', jugId: 'jug-7' }] as const)
      expect(play(roundAt('visit: empty'), [event]).proof).toBeNull();
  });

  test('a medicine without conflicts has nothing to tell', () => {
    expect(offerOf(offered()).proof?.told).toEqual([]);
  });
});
