import { describe, expect, test } from 'vitest';
import { type CautionStrength, cautionsFor } from '../../../core/dosing/cautions.ts';
import { decideDose } from '../../../core/dosing/decide.ts';
import { exactDose } from '../../../core/dosing/dose.ts';
import { Packet } from '../../../core/medicine/presentation.ts';
import { judgePowder } from '../../../core/mixing/powder.ts';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { mgPerMl, rateDelivered } from '../../../core/quantity/strength.ts';
import { usGallons } from '../../../core/quantity/volume.ts';
import { makeAnimal } from '../make/animal.ts';
import { makeApproval } from '../make/approval.ts';
import { makeCautionInput, NO_DOUBTS } from '../make/caution-input.ts';
import { makeEarlier } from '../make/earlier.ts';
import { makeHeld } from '../make/held.ts';
import { makeJug } from '../make/jug.ts';
import { makePacket } from '../make/regimen.ts';
import { hoursAgo } from '../make/time.ts';
import { makeWorld } from '../make/world.ts';

/** The strengths of the cautions a decision comes to, by code. */
function judged(decision: ReturnType<typeof decideDose>): Map<string, CautionStrength> {
  return new Map(decision.cautions.map(({ code, strength }) => [code, strength]));
}

const kid = makeAnimal({ class: 'young', lastWeight: { mass: kilograms(13.6), atMs: hoursAgo(24 * 7) } });

describe('a slip that has killed or would ends in a stop or an ask', () => {
  test('pounds for kilograms: a kid of 13.6 kg that the scale shows as 30 kg', () => {
    const found = judged(decideDose(kid, makeHeld(30), makeJug(), NO_DOUBTS, makeWorld()));
    expect(found.get('weight-pounds-for-kilograms')).toBe('ask');
  });

  test('kilograms for pounds: the same kid shown at 6.17 kg', () => {
    const found = judged(decideDose(kid, makeHeld(6.17), makeJug(), NO_DOUBTS, makeWorld()));
    expect(found.get('weight-pounds-for-kilograms')).toBe('ask');
  });

  test('a decimal slip in the weight: 136 kg for 13.6', () => {
    const found = judged(decideDose(kid, makeHeld(136), makeJug(), NO_DOUBTS, makeWorld()));
    expect(found.get('weight-far-from-last')).toBe('ask');
  });

  test('a decimal slip in the volume: ten times the dose measured', () => {
    const input = makeCautionInput();
    if (input.dose === null) throw new Error('no dose');
    const { delivered } = input.dose;
    const ten = { value: 10 * delivered.value, low: 10 * delivered.low, high: 10 * delivered.high };
    const found = cautionsFor({ ...input, dose: { ...input.dose, delivered: ten } });
    const codes = new Map(found.map(({ code, strength }) => [code, strength]));
    expect(codes.get('interval-crosses-ceiling')).toBe('ask');
    expect(codes.get('above-target')).toBe('ask');
  });

  test('a gallon for a quart: water for a gallon is not a packet’s, and the volume of a gallon’s mix is not drawn from a quart', () => {
    const gallon = makePacket();
    const named = { ...gallon.madeUpToMl, value: usGallons(1).value };
    expect(Packet.safeParse({ ...gallon, madeUpToMl: named }).success).toBe(false);
    // The dose follows the strength in the jug: what a gallon's mix would want is four times too much of a quart's,
    // 48 mg/kg, and passes the ceiling of the rule.
    const { regimen } = decideDose(makeAnimal(), makeHeld(), makeJug(), NO_DOUBTS, makeWorld());
    if (regimen === null) throw new Error('no rule');
    const gallonMix = makeJug({ strength: mgPerMl(46_800 / usGallons(1).value) });
    const drawn = exactDose(makeHeld(), regimen, gallonMix);
    const slip = rateDelivered(drawn, makeJug().strength, makeHeld().mass).value;
    expect(slip).toBeCloseTo(48, 6);
    expect(slip).toBeGreaterThan(regimen.ceiling.value);
    const input = makeCautionInput();
    if (input.dose === null) throw new Error('no dose');
    const found = cautionsFor({
      ...input,
      dose: { ...input.dose, delivered: { value: slip, low: slip, high: slip } },
    });
    expect(found.find(({ code }) => code === 'interval-crosses-ceiling')?.strength).toBe('ask');
  });

  test('gross for active: 52 g entered as the active is refused before any dose', () => {
    const gross = { value: 52, evidence: 'entered', source: 'a keeper of the test' } as const;
    expect(Packet.safeParse(makePacket({ activeGrams: gross })).success).toBe(false);
  });

  test.each([
    ['a packet of 13 g', 13],
    ['two packets', 104],
  ])('the wrong packet: %s is never taken for the one of 52 g', (_which, rise) => {
    expect(judgePowder(grams(rise), grams(52), grams(1))).not.toBe('whole');
  });

  test('the wrong bottle: one of another presentation than the rule is for stops', () => {
    const bottle = makeJug({ medicineId: 'albendazole', packetId: 'albendazole-45.5' });
    const cow = makeAnimal({ species: 'cattle', lastWeight: null });
    const approvals = [makeApproval({ regimenId: 'albendazole-cattle', direction: 'label' })];
    const found = judged(decideDose(cow, makeHeld(300), bottle, NO_DOUBTS, makeWorld({ approvals })));
    expect(found.get('presentation-not-covered')).toBe('stop');
  });

  test('the wrong species: a sheep’s drench to a calf, and a goat’s rule to a sheep, stop', () => {
    const drench = makeJug({ medicineId: 'ivermectin', packetId: 'ivermectin-0.8' });
    const calf = makeAnimal({ species: 'cattle', lastWeight: null });
    expect(
      judged(decideDose(calf, makeHeld(80), drench, NO_DOUBTS, makeWorld())).get('species-not-covered'),
    ).toBe('stop');
    const sheep = makeAnimal({ species: 'sheep' });
    const found = judged(decideDose(sheep, makeHeld(), makeJug(), NO_DOUBTS, makeWorld()));
    expect(found.get('not-approved')).toBe('stop');
  });

  test('another bottle of the same active: the second within the day stops', () => {
    const [levamisole] = makeWorld().formulary;
    if (levamisole === undefined) throw new Error('nothing ships');
    const own = { ...levamisole, id: 'own-levamisole' };
    const formulary = [...makeWorld().formulary, own];
    const earlier = [makeEarlier(2, { medicineId: 'own-levamisole' })];
    const found = judged(
      decideDose(makeAnimal(), makeHeld(), makeJug(), NO_DOUBTS, makeWorld({ formulary, earlier })),
    );
    expect(found.get('same-active-today')).toBe('stop');
  });
});
