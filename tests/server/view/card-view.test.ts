import { describe, expect, test } from 'vitest';
import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { syringesOnHand } from '../../../server/barn/memory.ts';
import { cardView } from '../../../server/view/card-view.ts';
import { DoseCardView } from '../../../shared/dose-card.ts';
import { bringToOffer, standingOffer, testBarn } from '../make/test-barn.ts';

describe('the card of the dose on offer, on the wire', () => {
  const barn = testBarn();
  bringToOffer(barn);
  const offer = standingOffer(barn);
  const card = cardView(offer, syringesOnHand(barn.barn.context.memory), SHIPPED);

  test('is what its schema says, and belongs to the offer', () => {
    expect(DoseCardView.parse(card)).toEqual(card);
    expect(card.offerId).toBe(offer.id);
  });

  test('carries each figure of the rule with its source, as the rule has them', () => {
    const { target, ceiling } = offer.regimen;
    expect(card.target).toMatchObject({ value: target.value, source: target.source });
    expect(card.ceiling).toMatchObject({ value: ceiling.value, source: ceiling.source });
    expect(card.floor).toMatchObject({ value: null, evidence: 'not-known' });
    expect(card.mixed.source).toContain('21 CFR 520.1242a');
  });

  test('shares the doubt as the offer does', () => {
    const { budget } = offer.dose;
    for (const [i, { share }] of card.parts.entries()) expect(share).toBeCloseTo(budget.shares[i] ?? 0, 6);
  });
});
