import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../../core/moment.ts';
import { lastProven } from '../../../core/reduction/proven.ts';
import { loadMemory } from '../../../server/barn/memory.ts';
import { CALENDAR_WORDS } from '../../../server/exports/calendar-words.ts';
import { planView } from '../../../server/view/plan-view.ts';
import { testPage, testsView, wormCheckView } from '../../../server/view/test-view.ts';
import { testReminders } from '../../../server/worms/test-reminders.ts';
import { EPGS, VIGNETTE } from '../../oracles/reduction.ts';
import { bringToOffer, GOAT, type TestBarn } from '../make/test-barn.ts';
import { barnWithGoats, changeJug, countAll, dose, each, FIFTY, plan, wholeTest } from '../make/worm-test.ts';

const pageOf = (barn: TestBarn, id: string) => {
  const page = testPage(barn.barn.context, id);
  if (page === null) throw new Error('there is no such test');
  return page;
};
const resultOf = (barn: TestBarn, id: string) => {
  const { result } = pageOf(barn, id);
  if (result?.ok !== true) throw new Error(`no result: ${result?.why}`);
  return result;
};

describe('a test is planned of the round', () => {
  test('of those weighed with a whole dose kept down, once', () => {
    const { barn, ids } = barnWithGoats(4);
    for (const id of ids.slice(0, 2)) dose(barn, id);
    dose(barn, 'g-3', 'spat-out');
    const [round] = planView(barn.barn.context).rounds;
    expect(round).toMatchObject({ medicine: 'Levamisole', species: 'goat', leftOut: 1 });
    expect(round?.treated.map(({ name }) => name)).toEqual(['G1', 'G2']);
    expect(round?.untreated.map(({ name }) => name)).toEqual(['Campion', 'Teasel', 'G4']);
    plan(barn, ['g-1', 'g-2']);
    expect(planView(barn.barn.context).rounds[0]?.treated).toEqual([]);
    expect(() => plan(barn, ['g-1', 'g-2'])).toThrow();
  });

  test('of those with most eggs first, told what they last showed', () => {
    const { barn, ids } = barnWithGoats(3);
    const why = { for: 'look', purpose: 'herd' } as const;
    barn.send({ type: 'log-egg-count', animalIds: ['g-3'], eggs: 9, method: FIFTY, takenOn: null, why });
    for (const id of ids) dose(barn, id);
    const [round] = planView(barn.barn.context).rounds;
    expect(round?.treated.map(({ name, lastEggsPerGram }) => [name, lastEggsPerGram])).toEqual([
      ['G3', 450],
      ['G1', null],
      ['G2', null],
    ]);
    expect(round?.expectedEggsPerGram).toBe(450);
  });

  test('and not a day later, since the dung of then says nothing of before', () => {
    const { barn, ids } = barnWithGoats(2);
    for (const id of ids) dose(barn, id);
    barn.clock.pass(DAY_MS + 1);
    expect(planView(barn.barn.context).rounds).toEqual([]);
    expect(testsView(barn.barn.context).canPlan).toBe(false);
  });

  test('refused without a whole dose, of one animal only, and unpaired without untreated ones', () => {
    const { barn, ids } = barnWithGoats(3);
    for (const id of ids.slice(0, 2)) dose(barn, id);
    const send = (treated: string[], over: Record<string, unknown> = {}) =>
      barn.send({
        type: 'plan-test',
        medicineId: 'levamisole',
        species: 'goat',
        design: 'paired',
        protocol: 'clinical',
        method: FIFTY,
        treated,
        untreated: [],
        ...over,
      });
    expect(send(['g-1', 'g-3'])).toMatchObject({ code: 'not-whole-dose' });
    expect(send(['g-1', 'g-1'])).toMatchObject({ code: 'not-whole-dose' });
    expect(send(['g-1', 'g-2'], { design: 'unpaired' })).toMatchObject({ code: 'needs-untreated' });
    expect(send(['g-1', 'g-2'], { untreated: ['nobody'] })).toMatchObject({ code: 'no-such-animal' });
    expect(barn.store.reductionTests.all()).toEqual([]);
  });
});

describe('a test asks for its samples', () => {
  test('before at the dose, after from the seventh day for levamisole, and is overdue after the fourteenth', () => {
    const { barn, ids } = barnWithGoats(2);
    for (const id of ids) dose(barn, id);
    const id = plan(barn, ids);
    const stands = () => [pageOf(barn, id).step, wormCheckView(barn.barn.context).due];
    expect(stands()).toEqual(['before', 1]);
    countAll(barn, id, 'before', each(ids, [30, 40]));
    expect(stands()).toEqual(['waiting', 0]);
    barn.clock.pass(7 * DAY_MS);
    expect(stands()).toEqual(['due', 1]);
    barn.clock.pass(8 * DAY_MS);
    expect(stands()).toEqual(['overdue', 1]);
    countAll(barn, id, 'after', each(ids, [1, 0]));
    expect(stands()).toEqual(['done', 0]);
    expect(wormCheckView(barn.barn.context)).toMatchObject({ open: 0 });
  });

  test('an animal without its first sample is not asked for its second', () => {
    const { barn, ids } = barnWithGoats(3);
    for (const id of ids) dose(barn, id);
    const id = plan(barn, ids);
    countAll(barn, id, 'before', { 'g-1': 30, 'g-2': 40 });
    barn.clock.pass(10 * DAY_MS);
    expect(pageOf(barn, id).missing).toEqual({ before: 1, after: 2 });
    countAll(barn, id, 'after', { 'g-1': 1, 'g-2': 0 });
    expect(pageOf(barn, id)).toMatchObject({ step: 'done', dropped: 1 });
  });

  test('takes each sample once, of an animal of it, at the factor of its fellows', () => {
    const { barn, ids } = barnWithGoats(3);
    for (const id of ids.slice(0, 2)) dose(barn, id);
    const testId = plan(barn, ['g-1', 'g-2']);
    countAll(barn, testId, 'before', { 'g-1': 30 });
    const log = (animalIds: string[], method = FIFTY) =>
      barn.send({
        type: 'log-egg-count',
        animalIds,
        eggs: 3,
        method,
        takenOn: null,
        why: { for: 'test', testId, stage: 'before' },
      });
    expect(log(['g-1'])).toMatchObject({ code: 'already-counted' });
    expect(log(['g-3'])).toMatchObject({ code: 'not-in-test' });
    expect(log(['g-2', 'g-1'])).toMatchObject({ code: 'one-animal-a-sample' });
    expect(log(['g-2'], { kind: 'told', factor: 25 })).toMatchObject({ code: 'other-factor' });
    expect(log(['g-2'], { kind: 'told', factor: 50 }).ok).toBe(true);
  });

  test('ends by the keeper’s word, once, and comes back so after a restart', () => {
    const { barn, ids } = barnWithGoats(3);
    for (const id of ids) dose(barn, id);
    const testId = plan(barn, ids);
    countAll(barn, testId, 'before', each(ids, [30, 40, 35]));
    countAll(barn, testId, 'after', { 'g-1': 1, 'g-2': 0 });
    expect(barn.send({ type: 'end-test', testId, how: 'judged' }).ok).toBe(true);
    expect(barn.send({ type: 'end-test', testId, how: 'given-up' })).toMatchObject({ code: 'test-ended' });
    expect(pageOf(barn, testId)).toMatchObject({ step: 'done', dropped: 1, ended: { how: 'judged' } });
    const { memory } = barn.barn.context;
    expect(loadMemory(barn.store, memory.settings).reductionTests).toEqual(memory.reductionTests);
  });
});

describe('the wire carries the published digits of', () => {
  test('fourteen sheep before and after: limits, verdict and method', () => {
    const { barn, testId } = wholeTest(
      EPGS.before.map((epg) => epg / EPGS.factor),
      EPGS.after.map((epg) => epg / EPGS.factor),
    );
    const result = resultOf(barn, testId);
    expect(result).toMatchObject({ by: 'delta', verdict: 'resistant', eggs: EPGS.eggs, fewEggs: false });
    expect(100 * result.reduction).toBeCloseTo(EPGS.percent, 9);
    expect(100 * result.limits.lower).toBeCloseTo(EPGS.deltaPaired90[0], 9);
    expect(100 * result.limits.upper).toBeCloseTo(EPGS.deltaPaired90[1], 9);
    expect(result.means.before.value).toBeCloseTo(EPGS.moments.mean[0], 8);
    expect(result.means.after.value).toBeCloseTo(EPGS.moments.mean[1], 8);
  });

  test('ten counts of the vignette at 90 %', () => {
    const { barn, testId } = wholeTest([...VIGNETTE.before], [...VIGNETTE.after]);
    const { limits, reduction } = resultOf(barn, testId);
    expect(100 * reduction).toBeCloseTo(VIGNETTE.percent, 6);
    expect(limits.lower).toBeCloseTo(VIGNETTE.deltaPaired90[0], 7);
    expect(limits.upper).toBeCloseTo(VIGNETTE.deltaPaired90[1], 7);
  });

  test('more eggs after than before: below zero, and not clamped', () => {
    const { barn, testId } = wholeTest([2, 5, 1, 4, 3], [9, 8, 12, 4, 9]);
    const { limits, reduction } = resultOf(barn, testId);
    expect(reduction).toBeCloseTo(1 - 42 / 15, 12);
    expect(limits.lower).toBeLessThan(-1);
  });
});

test('untreated against treated, both sampled once, are judged unpaired', () => {
  const { barn, ids } = barnWithGoats(8);
  const [treated, untreated] = [ids.slice(0, 4), ids.slice(4)];
  for (const id of treated) dose(barn, id);
  const testId = plan(barn, treated, { untreated, design: 'unpaired' });
  expect(pageOf(barn, testId).step).toBe('waiting');
  barn.clock.pass(10 * DAY_MS);
  countAll(barn, testId, 'after', each(ids, [1, 0, 2, 0, 40, 55, 38, 60]));
  const page = pageOf(barn, testId);
  expect(page.result).toMatchObject({ by: 'bnb-published-shapes', eggs: { before: 193, after: 3 } });
  expect(page.confounders.map(({ confounder }) => confounder)).not.toContain('no-untreated-group');
});

test('untreated ones beside a paired test tell what the herd fell by itself', () => {
  const { barn, ids } = barnWithGoats(4);
  const [treated, untreated] = [ids.slice(0, 2), ids.slice(2)];
  for (const id of treated) dose(barn, id);
  const testId = plan(barn, treated, { untreated });
  countAll(barn, testId, 'before', each(ids, [40, 60, 50, 50]));
  barn.clock.pass(10 * DAY_MS);
  countAll(barn, testId, 'after', each(ids, [5, 5, 25, 25]));
  const { untreatedFell, controlled, confounders } = pageOf(barn, testId);
  // McKenna 2006, formula 1: 1 - (10/100)(100/50).
  expect([untreatedFell, controlled]).toEqual([0.5, 0.8]);
  expect(confounders).toContainEqual({ confounder: 'fell-untreated', doses: 0 });
});

describe('what else may have made it is read from the records', () => {
  const found = (barn: TestBarn, id: string) =>
    new Map(pageOf(barn, id).confounders.map(({ confounder, doses }) => [confounder, doses]));

  test('an unchecked syringe, no untreated, genera not told; the checked platform is no reason', () => {
    const { barn, testId } = wholeTest([30, 40, 35], [1, 0, 2]);
    expect([...found(barn, testId)]).toEqual([
      ['syringe-unchecked', 3],
      ['no-untreated-group', 0],
      ['genera-not-told', 0],
    ]);
  });

  test('a dose corrected afterwards: less, another animal’s, or never given', () => {
    const { barn, testId } = wholeTest([30, 40, 35], [1, 0, 2]);
    const [third, second, first] = barn.barn.context.memory.recent.map(({ treatment }) => treatment.id);
    barn.send({
      type: 'correct',
      treatmentId: first ?? '',
      what: { kind: 'wrong-volume', volumeMl: 2 },
    });
    barn.send({ type: 'correct', treatmentId: second ?? '', what: { kind: 'not-given' } });
    barn.send({
      type: 'correct',
      treatmentId: third ?? '',
      what: { kind: 'wrong-animal', animalId: GOAT.id },
    });
    const confounders = found(barn, testId);
    expect(confounders.get('dose-short')).toBe(3);
    expect(confounders.get('dose-not-kept')).toBe(2);
    expect(confounders.get('weight-not-from-scale')).toBe(1);
  });

  test('a platform whose check was long ago, few eggs, and a late sample', () => {
    const { barn, ids } = barnWithGoats(2);
    barn.send({ type: 'set-check-rule', everyDays: 1, stops: false });
    barn.clock.pass(DAY_MS);
    changeJug(barn, { useByMs: barn.clock.wallMs + DAY_MS, relative: 0.03 });
    for (const id of ids) dose(barn, id);
    const testId = plan(barn, ids);
    countAll(barn, testId, 'before', each(ids, [20, 25]));
    barn.clock.pass(16 * DAY_MS);
    countAll(barn, testId, 'after', each(ids, [1, 0]));
    const confounders = found(barn, testId);
    expect(confounders.get('scale-unchecked')).toBe(2);
    expect(confounders.get('strength-doubtful')).toBe(2);
    expect(confounders.get('sampled-late')).toBe(2);
    expect(confounders.has('few-eggs')).toBe(true);
  });
});

test('the second samples stand in the calendar on the first of their days, until they are counted', () => {
  const { barn, ids } = barnWithGoats(2);
  for (const id of ids) dose(barn, id);
  const testId = plan(barn, ids);
  expect(testReminders(barn.barn.context, CALENDAR_WORDS.en)).toEqual([]);
  countAll(barn, testId, 'before', each(ids, [30, 40]));
  const { dueFrom } = pageOf(barn, testId);
  const [event, ...others] = testReminders(barn.barn.context, CALENDAR_WORDS.en);
  expect(others).toEqual([]);
  expect(event).toMatchObject({
    uid: `retest-${testId}@byreside`,
    summary: 'Levamisole: take the second dung samples',
    description: 'G1, G2. Day 7 to 14 after the dose.',
    atMs: Date.parse(dueFrom),
    allDay: true,
  });
  barn.clock.pass(8 * DAY_MS);
  countAll(barn, testId, 'after', each(ids, [0, 0]));
  expect(testReminders(barn.barn.context, CALENDAR_WORDS.en)).toEqual([]);
});

describe('a medicine that failed its last test', () => {
  test('is asked about at the dose in that species, with day and efficacy', () => {
    const { barn, testId } = wholeTest([30, 40, 35, 28, 44, 39], [9, 12, 8, 10, 15, 6]);
    expect(resultOf(barn, testId).verdict).toBe('resistant');
    expect(wormCheckView(barn.barn.context).failed).toMatchObject([
      { testId, active: 'levamisole hydrochloride', species: 'goat', verdict: 'resistant' },
    ]);
    barn.clock.pass(20 * DAY_MS);
    changeJug(barn, { useByMs: barn.clock.wallMs + DAY_MS });
    expect(() => bringToOffer(barn)).toThrow('no offer stands: cautions');
    const { phase } = barn.barn.context.memory.round;
    if (phase.step !== 'cautions') throw new Error(phase.step);
    const ask = phase.decision.cautions.find(({ code }) => code === 'test-resistant');
    expect(ask).toMatchObject({ strength: 'ask', values: { testedAtMs: expect.any(Number) } });
    expect(ask?.values['reduction']).toBeCloseTo(1 - 60 / 216, 12);
  });

  test('is free of it once its counts are set right, and by a later test only where that tells something', () => {
    const { barn } = wholeTest([30, 40, 35, 28, 44, 39], [9, 12, 8, 10, 15, 6]);
    expect(wormCheckView(barn.barn.context).failed).toHaveLength(1);
    for (const { record } of barn.barn.context.memory.eggCounts.slice(-6))
      barn.send({ type: 'correct-egg-count', countId: record.id, what: { kind: 'other-number', eggs: 0 } });
    expect(wormCheckView(barn.barn.context).failed).toEqual([]);
    const one = { medicineId: 'levamisole', species: 'goat', reduction: 0.5 } as const;
    expect(
      lastProven([
        { ...one, testId: 'old', verdict: 'resistant', atMs: 1 },
        { ...one, testId: 'vague', verdict: 'inconclusive', atMs: 2 },
        { ...one, testId: 'sheep', verdict: 'susceptible', species: 'sheep', atMs: 3 },
      ]).map(({ testId }) => testId),
    ).toEqual(['old', 'sheep']);
  });
});
