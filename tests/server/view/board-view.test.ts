import { describe, expect, test } from 'vitest';
import { boardNow } from '../../../server/view/board-view.ts';
import { bringToOffer, type TestBarn, testBarn } from '../make/test-barn.ts';

function board(test: TestBarn) {
  return boardNow(test.barn.context).find(({ animal }) => animal === 'goat-1');
}

describe('the board on the wire', () => {
  test('is free until the first dose, then names what keeps it back', () => {
    const barn = testBarn();
    expect(board(barn)).toMatchObject({ milk: { kind: 'free' }, meat: { kind: 'free' } });
    barn.send({ type: 'give', offerId: bringToOffer(barn), outcome: 'whole' });
    expect(board(barn)).toMatchObject({
      milk: { kind: 'unknown', because: { medicine: 'Levamisole', value: null, evidence: 'not-known' } },
      meat: { kind: 'at', provisional: false, because: { medicine: 'Levamisole' } },
    });
    const { meat } = board(barn) ?? {};
    if (meat?.kind !== 'at') throw new Error('no time');
    const { unit, value, from } = meat.because;
    // What is told as the reason leads to what is told as the time.
    const hours = (value ?? 0) * (unit === 'days' ? 24 : 1);
    expect(Date.parse(from) + hours * 3_600_000).toBe(Date.parse(meat.at));
    expect(from).toBe(new Date(barn.barn.context.memory.recent[0]?.treatment.givenAtMs ?? 0).toISOString());
  });

  test('follows the veterinarian’s time entered later, and survives a restart', () => {
    const barn = testBarn();
    barn.send({ type: 'give', offerId: bringToOffer(barn), outcome: 'whole' });
    const [entry] = barn.barn.context.memory.recent;
    const treatmentId = entry?.treatment.id ?? '';
    const what = {
      kind: 'vet-time',
      meatHours: null,
      milkHours: 96,
      meatDays: 10,
      milkDays: null,
    } as const;
    expect(barn.send({ type: 'correct', treatmentId, what })).toMatchObject({ ok: true });
    const given = entry?.treatment.givenAtMs ?? 0;
    expect(board(barn)?.milk).toMatchObject({
      kind: 'at',
      at: new Date(given + 96 * 3_600_000).toISOString(),
      because: { unit: 'hours', value: 96, evidence: 'directed' },
    });
    expect(barn.store.dayBook.newest(1)[0]?.corrections[0]?.what).toEqual({
      kind: 'vet-time',
      meat: { unit: 'days', count: 10 },
      milk: { unit: 'hours', count: 96 },
    });
    barn.clock.pass(11 * 86_400_000);
    expect(board(barn)).toMatchObject({ milk: { kind: 'free' }, meat: { kind: 'free' } });
  });

  test('says the times are provisional on a clock that is not trusted, and frees nothing', () => {
    const barn = testBarn();
    barn.send({ type: 'give', offerId: bringToOffer(barn), outcome: 'whole' });
    barn.clock.pass(400 * 86_400_000);
    barn.clock.trusted = false;
    expect(board(barn)?.meat).toMatchObject({ kind: 'at', provisional: true });
  });

  test('a treatment taken back as not given can have no time', () => {
    const barn = testBarn();
    barn.send({ type: 'give', offerId: bringToOffer(barn), outcome: 'whole' });
    const treatmentId = barn.barn.context.memory.recent[0]?.treatment.id ?? '';
    barn.send({ type: 'correct', treatmentId, what: { kind: 'not-given' } });
    const what = { kind: 'vet-time', meatHours: 9, milkHours: null, meatDays: null, milkDays: null } as const;
    expect(barn.send({ type: 'correct', treatmentId, what })).toMatchObject({ code: 'already-corrected' });
  });

  test('is the same array until a dose, a time that passes or a doubt of the clock changes it', () => {
    const barn = testBarn();
    const before = boardNow(barn.barn.context);
    barn.clock.pass(60_000);
    expect(boardNow(barn.barn.context)).toBe(before);
    barn.send({ type: 'give', offerId: bringToOffer(barn), outcome: 'whole' });
    const held = boardNow(barn.barn.context);
    const { meat } = board(barn) ?? {};
    if (meat?.kind !== 'at') throw new Error('no time');
    barn.clock.pass(Date.parse(meat.at) - barn.clock.wallMs - 1);
    expect(boardNow(barn.barn.context)).toBe(held);
    barn.clock.pass(1);
    expect(board(barn)?.meat).toEqual({ kind: 'free' });
    barn.clock.trusted = false;
    expect(board(barn)?.meat).toMatchObject({ kind: 'at', provisional: true });
    // A clock set back brings the time back.
    barn.clock.trusted = true;
    barn.clock.wallMs -= 1;
    expect(board(barn)?.meat).toMatchObject({ kind: 'at', provisional: false });
  });
});
