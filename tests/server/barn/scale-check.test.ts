import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CHECK_LEFT_MS } from '../../../core/checking/scale-check.ts';
import { DAY_MS } from '../../../core/moment.ts';
import { grams } from '../../../core/quantity/mass.ts';
import { bringToOffer, GOAT, standingOffer, type TestBarn, testBarn } from '../make/test-barn.ts';

const START = { type: 'check-start', role: 'platform' } as const;
const NEXT = { type: 'check-next' } as const;

/** Checks the platform with 20 kg as far as its four corners, and leaves the way up and down out. */
function checkPlatform(barn: TestBarn, middle = 20_000): ReturnType<TestBarn['send']> {
  const weighed = (onDeck: number) => {
    barn.weigh(onDeck, 1500);
    const answer = barn.send(NEXT);
    if (!answer.ok) throw new Error(`the test's own weighing was refused: ${answer.code}`);
  };
  barn.send(START);
  weighed(0);
  barn.send({ type: 'check-weight', weightId: 'kg-20' });
  weighed(middle);
  weighed(0);
  for (let corner = 0; corner < 4; corner += 1) weighed(20_000);
  return barn.send({ type: 'check-skip' });
}

function cautionsOf(barn: TestBarn): string[] {
  const { phase } = barn.barn.context.memory.round;
  return phase.step === 'cautions' ? phase.decision.cautions.map(({ code }) => code) : [];
}

/** Leads the goat on with the jug in hand, and gives back what is asked. */
function weighGoat(barn: TestBarn): string[] {
  const { phase } = barn.barn.context.memory.round;
  if (phase.step === 'no-jug') {
    barn.send({ type: 'take-jug', jugId: 'jug-1' });
    barn.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  }
  barn.weigh(0, 2000);
  barn.send({ type: 'read-tag', tag: GOAT.tag ?? '' });
  barn.weigh(15_400, 4000);
  return cautionsOf(barn);
}

describe('a finished check of the platform', () => {
  test('is on disk with its readings and verdict, and counts after a restart', () => {
    const path = join(mkdtempSync(join(tmpdir(), 'check-')), 'test.sqlite');
    const first = testBarn(path);
    expect(checkPlatform(first).ok).toBe(true);
    const { check } = first.barn.context.memory;
    if (check.step !== 'result') throw new Error(check.step);
    expect(check.record).toMatchObject({ role: 'platform', verdict: 'passed', by: 'Wren', second: null });
    first.store.close();

    const second = testBarn(path);
    expect(second.barn.context.memory.scaleChecks.platform).toEqual(check.record);
    expect(second.barn.context.memory.check).toEqual({ step: 'idle' });
    expect(second.barn.context.memory.scaleChecks.bench).toBeNull();
  });

  test('that failed makes the next dose ask, and one that passed after it does not', () => {
    const barn = testBarn();
    checkPlatform(barn, 20_400);
    expect(barn.barn.context.memory.scaleChecks.platform?.verdict).toBe('failed');
    barn.send(NEXT);
    expect(weighGoat(barn)).toContain('scale-check-failed');
    checkPlatform(barn);
    barn.send(NEXT);
    expect(weighGoat(barn)).toEqual([]);
    expect(standingOffer(barn).animal.id).toBe(GOAT.id);
  });

  test('is not logged while it is stopped half way', () => {
    const barn = testBarn();
    const before = barn.barn.context.memory.scaleChecks.platform;
    barn.send(START);
    barn.weigh(0, 1500);
    barn.send(NEXT);
    expect(barn.send({ type: 'check-cancel' }).ok).toBe(true);
    expect(barn.store.scaleChecks.latest('platform')).toEqual(before);
  });

  test('is not finished when the disk refuses it: the same press can be repeated', () => {
    const barn = testBarn();
    const { scaleChecks } = barn.store;
    const write = scaleChecks.add;
    scaleChecks.add = () => {
      throw new Error('disk full');
    };
    expect(checkPlatform(barn)).toMatchObject({ ok: false, code: 'not-written' });
    expect(barn.barn.context.memory.check.step).toBe('second');
    scaleChecks.add = write;
    expect(barn.send({ type: 'check-skip' }).ok).toBe(true);
    expect(barn.barn.context.memory.check.step).toBe('result');
  });

  test('sent to finish twice under one id is written once', () => {
    const barn = testBarn();
    checkPlatform(barn);
    const { id } = barn.barn.context.memory.scaleChecks.platform ?? { id: '' };
    expect(barn.send({ type: 'check-skip', id: 'again' })).toMatchObject({ code: 'wrong-state' });
    expect(barn.store.scaleChecks.latest('platform')?.id).toBe(id);
  });
});

describe('the caution of a platform that was not checked', () => {
  test('appears when the check is older than its days, and goes when it is checked', () => {
    const barn = testBarn();
    barn.clock.pass(29 * DAY_MS + DAY_MS / 2);
    barn.send({ type: 'set-check-rule', everyDays: 20, stops: false });
    const jug = { ...barn.barn.context.memory.jugs[0], useByMs: barn.clock.wallMs + DAY_MS };
    barn.barn.context.memory = { ...barn.barn.context.memory, jugs: [jug as never] };
    expect(weighGoat(barn)).toEqual(['scale-unchecked', 'extra-label']);
    expect(barn.send({ type: 'accept', code: 'scale-unchecked' }).ok).toBe(true);
    expect(standingOffer(barn).accepted.map(({ code }) => code)).toEqual(['scale-unchecked']);
  });

  test('stands from the first day on a kiosk whose platform was never checked', () => {
    const barn = testBarn(':memory:', (store) => {
      const donor = testBarn().store;
      for (const animal of donor.animals.all()) store.animals.add(animal, 'Wren');
      for (const jug of donor.jugs.atHand()) store.jugs.add(jug);
      for (const approval of donor.approvals.inForce()) store.approvals.approve(approval);
      store.settings.write('syringeIds', ['syringe-6-by-0.1']);
    });
    weighGoat(barn);
    expect(standingOffer(barn).cautions).toContainEqual({
      code: 'scale-unchecked',
      strength: 'note',
      values: { days: 30 },
    });
  });

  test('is a stop after a failed check where the farm has set it so', () => {
    const barn = testBarn();
    expect(barn.send({ type: 'set-check-rule', everyDays: 30, stops: true }).ok).toBe(true);
    checkPlatform(barn, 20_400);
    barn.send(NEXT);
    expect(weighGoat(barn)[0]).toBe('scale-check-failed');
    expect(barn.send({ type: 'accept', code: 'scale-check-failed' })).toMatchObject({
      code: 'cannot-pass-stop',
    });
  });
});

describe('while the platform is checked', () => {
  test('a weight is no animal: nothing is held, shown or offered from it', () => {
    const barn = testBarn();
    barn.send({ type: 'take-jug', jugId: 'jug-1' });
    barn.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
    barn.weigh(0, 2000);
    barn.send({ type: 'read-tag', tag: GOAT.tag ?? '' });
    checkPlatform(barn);
    expect(barn.barn.context.memory.round.phase).toMatchObject({ step: 'visit', visit: { weight: null } });
    expect(barn.barn.context.memory.deck).toMatchObject({ verdict: 'blank', held: null, live: null });
    barn.weigh(20_000, 4000);
    expect(barn.barn.context.memory.round.phase).toMatchObject({ step: 'visit', visit: { weight: null } });
  });

  test('a dose already on offer stands through a pass, and is judged anew after a failure', () => {
    const barn = testBarn();
    const offerId = bringToOffer(barn);
    checkPlatform(barn);
    expect(standingOffer(barn).id).toBe(offerId);
    checkPlatform(barn, 20_400);
    expect(barn.barn.context.memory.round).toMatchObject({
      phase: { step: 'visit' },
      unanswered: [{ id: offerId }],
    });
  });

  test('a link that goes takes the check back to its zero, and shows nothing until it is ready', () => {
    const barn = testBarn();
    barn.send(START);
    barn.weigh(0, 1500);
    barn.send(NEXT);
    barn.links.platform = 'lost';
    barn.barn.linkChanged('platform', false);
    expect(barn.barn.context.memory.check).toMatchObject({ step: 'zero', restarted: true });
    expect(barn.barn.context.memory.deadWeight.live).toBeNull();
    expect(barn.send(NEXT)).toMatchObject({ code: 'scale-not-ready' });
  });

  test('a check nobody goes on with gives the platform back to the animals', () => {
    const barn = testBarn();
    barn.send(START);
    barn.weigh(0, 1500);
    barn.clock.pass(CHECK_LEFT_MS);
    barn.barn.tick();
    expect(barn.barn.context.memory.check).toEqual({ step: 'idle' });
    bringToOffer(barn);
  });
});

describe('the bench is in use by one job at a time:', () => {
  const bench = (barn: TestBarn, onIt: number): void => {
    for (let passed = 0; passed < 1500; passed += 100) {
      barn.clock.pass(100);
      barn.barn.read({
        role: 'bench',
        mass: grams(onIt),
        division: grams(1),
        stability: 'stable',
        net: false,
        zero: onIt === 0,
        at: barn.clock.uptimeMs,
      });
    }
  };

  test('no check of it while a jug is mixed, and no jug while it is checked', () => {
    const barn = testBarn();
    barn.send({ type: 'mix-start', packetId: 'levamisole-52g' });
    expect(barn.send({ type: 'check-start', role: 'bench' })).toMatchObject({ code: 'bench-in-use' });
    expect(barn.send(START).ok).toBe(true);
    barn.send({ type: 'check-cancel' });
    barn.send({ type: 'mix-cancel' });
    expect(barn.send({ type: 'check-start', role: 'bench' }).ok).toBe(true);
    expect(barn.send({ type: 'mix-start', packetId: 'levamisole-52g' })).toMatchObject({
      code: 'bench-in-use',
    });
  });

  test('its own check reads it and is kept apart from the platform’s', () => {
    const barn = testBarn();
    const before = barn.barn.context.memory.scaleChecks.platform;
    barn.send({ type: 'check-start', role: 'bench' });
    bench(barn, 0);
    barn.send(NEXT);
    barn.send({ type: 'check-weight', weightId: 'g-500' });
    for (const onIt of [502, 0]) {
      bench(barn, onIt);
      expect(barn.send(NEXT).ok).toBe(true);
    }
    barn.send({ type: 'check-skip' });
    const { scaleChecks } = barn.barn.context.memory;
    expect(scaleChecks.bench).toMatchObject({ role: 'bench', verdict: 'failed', corners: null });
    expect(scaleChecks.platform).toBe(before);
  });
});
