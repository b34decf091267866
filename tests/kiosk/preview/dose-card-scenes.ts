import { type DoseWorld, decideDose } from '../../../core/dosing/decide.ts';
import { SYRINGE_CATALOGUE } from '../../../core/dosing/syringe.ts';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { grams } from '../../../core/quantity/mass.ts';
import type { Offer } from '../../../core/round/offer.ts';
import { cardView } from '../../../server/view/card-view.ts';
import { offerView } from '../../../server/view/dose-view.ts';
import type { KioskState } from '../../../shared/state.ts';
import { makeAnimal } from '../../core/make/animal.ts';
import { makeHeld } from '../../core/make/held.ts';
import { makeJug } from '../../core/make/jug.ts';
import { makeWorld } from '../../core/make/world.ts';
import { BASE, NOW } from './base-state.ts';
import type { Scene } from './scene.ts';

const ON_HAND = SYRINGE_CATALOGUE.filter(({ id }) =>
  ['syringe-3-by-0.1', 'syringe-6-by-0.1', 'syringe-12-by-0.2'].includes(id),
);
const AT = Date.parse(NOW) - 70_000;

/** A dose on offer worked out in full, with its card: no figure of these scenes is written by hand. */
export function offered(name: string, kg: number, doubtGrams: number): Partial<KioskState> {
  const world: DoseWorld = { ...makeWorld(), syringes: ON_HAND };
  const animal = makeAnimal({ id: 'a1', name, lastWeight: null });
  const held = makeHeld(kg, { uncertainty: grams(doubtGrams) });
  const jug = makeJug({ id: 'j7', by: 'Sam', mixedAtMs: AT - 7_200_000 });
  const { regimen, approval, dose } = decideDose(
    animal,
    held,
    jug,
    { unanswered: false, namedLate: false },
    world,
  );
  if (regimen === null || approval === null || dose === null) throw new Error(`no dose for ${name}`);
  const offer: Offer = {
    id: `o-${name}`,
    animal,
    jug,
    regimen,
    approval,
    weight: { held, atMs: AT },
    proof: null,
    group: null,
    dose,
    cautions: [{ code: 'extra-label', strength: 'note', values: {} }],
    accepted: [],
    expiresAtUptimeMs: 0,
    expiresAtMs: AT + 600_000,
  };
  return {
    weightUnit: 'kg',
    offer: offerView(offer, SHIPPED),
    card: cardView(offer, ON_HAND, SHIPPED),
    round: {
      step: 'offered',
      jugId: 'j7',
      animal: 'a1',
      weight: { grams: 1000 * kg, uncertaintyGrams: doubtGrams, at: NOW },
      onDeck: false,
      unanswered: [],
    },
  };
}

const KID = offered('Pip', 4, 30);
const KID_13 = offered('Clover', 13, 40);
const BUCK = offered('Old Bramble', 90, 120);
const COARSE = offered('Juniper', 13, 1500);

function scene(name: string, changes: Partial<KioskState>, taps: readonly string[]): Scene {
  return { name, place: 'platform', state: { ...BASE, ...changes }, taps };
}

/** The card of a small kid, a kid, a buck and a kid on a coarse scale, and where each figure comes from. */
export const DOSE_CARD_SCENES: readonly Scene[] = [
  scene('card-offer-kid', KID, []),
  scene('card-kid', KID, ['why']),
  scene('card-kid-13', KID_13, ['why']),
  scene('card-buck', BUCK, ['why']),
  scene('card-coarse', COARSE, ['why']),
  scene(
    'card-unanswered',
    {
      ...KID,
      round: { ...BUCK.round, unanswered: BUCK.offer == null ? [] : [BUCK.offer] } as KioskState['round'],
    },
    ['why'],
  ),
  ...['weight', 'rate', 'limits', 'strength', 'volume'].map((figure) =>
    scene(`card-source-${figure}`, KID, ['why', `card-${figure}`]),
  ),
];
