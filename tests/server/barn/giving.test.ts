import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { bringToOffer, GOAT, standingOffer, testBarn } from '../make/test-barn.ts';

function freshPath(): string {
  return join(mkdtempSync(join(tmpdir(), 'barn-')), 'test.sqlite');
}

test('a dose that is given is on disk with the very numbers that were offered', () => {
  const path = freshPath();
  const first = testBarn(path);
  const offerId = bringToOffer(first);
  const shown = standingOffer(first);
  expect(first.send({ type: 'give', offerId, outcome: 'whole' })).toMatchObject({ ok: true });
  first.store.close();

  const [entry, ...more] = testBarn(path).barn.context.memory.recent;
  expect(more).toEqual([]);
  expect(entry?.treatment.offer).toEqual(shown);
  expect(shown.dose.plan.total.value).toBe(3.7);
});

test('the same intent sent twice gives once and answers the same', () => {
  const test_ = testBarn();
  const offerId = bringToOffer(test_);
  const give = { type: 'give', id: 'once', offerId, outcome: 'whole' } as const;
  expect(test_.send(give)).toEqual({ ok: true, id: 'once', repeated: false });
  expect(test_.send(give)).toEqual({ ok: true, id: 'once', repeated: true });
  expect(test_.barn.context.memory.recent).toHaveLength(1);
});

test('the same intent sent again after a restart gives nothing again', () => {
  const path = freshPath();
  const first = testBarn(path);
  const give = { type: 'give', id: 'once', offerId: bringToOffer(first), outcome: 'whole' } as const;
  first.send(give);
  first.store.close();
  const second = testBarn(path);
  expect(second.send(give)).toEqual({ ok: true, id: 'once', repeated: true });
  expect(second.barn.context.memory.recent).toHaveLength(1);
});

test('an id used for another intent is refused', () => {
  const test_ = testBarn();
  const offerId = bringToOffer(test_);
  test_.send({ type: 'give', id: 'once', offerId, outcome: 'whole' });
  expect(test_.send({ type: 'give', id: 'once', offerId, outcome: 'part' })).toMatchObject({
    code: 'id-reused',
  });
});

test('two gives under different ids log one treatment', () => {
  const test_ = testBarn();
  const offerId = bringToOffer(test_);
  expect(test_.send({ type: 'give', offerId, outcome: 'whole' }).ok).toBe(true);
  expect(test_.send({ type: 'give', offerId, outcome: 'whole' })).toMatchObject({
    ok: false,
    code: 'offer-ended',
  });
  expect(test_.barn.context.memory.recent).toHaveLength(1);
});

test('when the disk refuses the record nothing is logged, the dose stays offered, and the same press can be repeated', () => {
  const test_ = testBarn();
  const offerId = bringToOffer(test_);
  const { dayBook } = test_.store;
  const write = dayBook.addTreatment;
  dayBook.addTreatment = () => {
    throw new Error('disk full');
  };
  const give = { type: 'give', id: 'pressed', offerId, outcome: 'whole' } as const;
  expect(test_.send(give)).toMatchObject({ ok: false, code: 'not-written' });
  expect(test_.failures).toHaveLength(1);
  expect(standingOffer(test_).id).toBe(offerId);
  expect(test_.barn.context.memory.recent).toEqual([]);

  dayBook.addTreatment = write;
  expect(test_.send(give)).toEqual({ ok: true, id: 'pressed', repeated: false });
  expect(test_.barn.context.memory.recent).toHaveLength(1);
});

test('a dose taken back as not given can be offered again at once and the day book keeps both', () => {
  const test_ = testBarn();
  test_.send({ type: 'give', offerId: bringToOffer(test_), outcome: 'whole' });
  const [entry] = test_.barn.context.memory.recent;
  const treatmentId = entry?.treatment.id ?? '';
  expect(test_.send({ type: 'correct', treatmentId, what: { kind: 'not-given' } }).ok).toBe(true);
  expect(standingOffer(test_).id).not.toBe(entry?.treatment.offer.id);
  expect(test_.send({ type: 'correct', treatmentId, what: { kind: 'not-given' } })).toMatchObject({
    code: 'already-corrected',
  });
  expect(test_.barn.context.memory.jugs[0]?.drawn.value).toBe(0);
});

test('a dose that went to the wrong animal counts against the one that swallowed it', () => {
  const test_ = testBarn();
  test_.send({ type: 'give', offerId: bringToOffer(test_), outcome: 'whole' });
  const treatmentId = test_.barn.context.memory.recent[0]?.treatment.id ?? '';
  test_.send({ type: 'correct', treatmentId, what: { kind: 'wrong-animal', animalId: 'goat-2' } });
  test_.weigh(0, 1000);
  test_.send({ type: 'pick-animal', animalId: 'goat-2' });
  test_.weigh(15_400, 4000);
  expect(test_.barn.context.memory.round.phase).toMatchObject({
    step: 'cautions',
    decision: { cautions: [{ code: 'same-active-today', strength: 'stop' }, {}] },
  });
});

test('an animal dosed today meets a stop when it comes back', () => {
  const test_ = testBarn();
  test_.send({ type: 'give', offerId: bringToOffer(test_), outcome: 'whole' });
  test_.weigh(0, 2000);
  test_.send({ type: 'read-tag', tag: GOAT.tag ?? '' });
  test_.weigh(15_400, 4000);
  expect(test_.barn.context.memory.round.phase).toMatchObject({ step: 'cautions' });
  expect(test_.send({ type: 'accept', code: 'same-active-today' })).toMatchObject({
    code: 'cannot-pass-stop',
  });
});

test('an offer that ended because another animal stepped on can still be logged once, as late', () => {
  const test_ = testBarn();
  const offerId = bringToOffer(test_);
  test_.weigh(0, 1500);
  test_.weigh(40_000, 500);
  expect(test_.send({ type: 'give', offerId, outcome: 'whole' })).toMatchObject({ code: 'offer-ended' });
  expect(test_.send({ type: 'answer', offerId, given: true }).ok).toBe(true);
  expect(test_.send({ type: 'answer', offerId, given: true })).toMatchObject({ code: 'offer-ended' });
  expect(test_.barn.context.memory.recent).toMatchObject([
    { treatment: { late: true, offer: { id: offerId } } },
  ]);
});

test('when the platform goes silent the weight is gone, the dose already shown can be logged and no new one is offered', () => {
  const test_ = testBarn();
  const offerId = bringToOffer(test_);
  test_.links.platform = 'silent';
  test_.barn.linkChanged('platform', false);
  expect(test_.barn.context.memory.deck).toMatchObject({ live: null, held: null, verdict: 'blank' });
  expect(test_.send({ type: 'give', offerId, outcome: 'whole' }).ok).toBe(true);
  test_.send({ type: 'next' });
  test_.send({ type: 'pick-animal', animalId: 'goat-2' });
  expect(test_.barn.context.memory.round.phase).toMatchObject({ step: 'visit', visit: { weight: null } });
});
