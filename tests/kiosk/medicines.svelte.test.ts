import { afterEach, describe, expect, test, vi } from 'vitest';
import { Intent } from '../../shared/intent.ts';
import type { MountedApp } from './mount-app.ts';
import { openScene } from './open-scene.ts';
import { withOwn } from './preview/own-medicine-scenes.ts';
import { SCENES } from './preview/scenes.ts';
import { soon } from './soon.ts';
import { textOf } from './text-of.ts';

let app: MountedApp | undefined;

async function open(name: string, taps: readonly string[] = []): Promise<MountedApp> {
  const scene = SCENES.find((candidate) => candidate.name === name);
  if (scene === undefined) throw new Error(`no scene is called ${name}`);
  app = await openScene({ ...scene, taps: [...(scene.taps ?? []), ...taps] });
  return app;
}

/** Keeps a finger on a held plate for as long as it asks, lifts it, and waits until the next tap counts. */
function holdDown(page: MountedApp, testid: string): void {
  vi.useFakeTimers();
  page.press(testid, 'pointerdown');
  vi.advanceTimersByTime(600);
  document.body.dispatchEvent(new PointerEvent('pointerup', { pointerId: 1, bubbles: true }));
  vi.advanceTimersByTime(500);
  vi.useRealTimers();
}

function sent(page: MountedApp): Intent[] {
  for (const intent of page.socket.intents) expect(Intent.safeParse(intent)).toMatchObject({ success: true });
  return page.socket.intents;
}

const lines = (): string[] =>
  [...document.querySelectorAll('[data-testid="review-line"]')].map((line) =>
    [...line.children].map(textOf).join(': '),
  );

afterEach(async () => {
  await app?.close();
  app = undefined;
});

describe('a packet', () => {
  test('is read off its label, shown whole, and kept by one held press', async () => {
    const page = await open('enter-packet-review');
    expect(lines()).toEqual([
      'Whole packet: 13 g',
      'Active in it: 11.7 g',
      'Made up to: 1 US quart',
      'Mix strength: not printed',
      'Keeps: 12 hours, guard',
    ]);
    page.click('review-keep');
    expect(sent(page)).toEqual([]);
    holdDown(page, 'review-keep');
    expect(sent(page)).toMatchObject([
      {
        type: 'keep-presentation',
        medicineId: 'levamisole',
        presentation: {
          form: 'powder',
          grossGrams: 13,
          activeGrams: 11.7,
          madeUpTo: { amount: 1, unit: 'US quart' },
          printedMgPerMl: null,
          jugLifeHours: null,
        },
      },
    ]);
    // Only what the server then shows tells that it is in.
    expect(page.find('kept')).toBeNull();
    page.patch({ shed: withOwn({ packet: true }).shed });
    expect(page.text('kept')).toContain('Packet 13 g');
    page.click('kept-done');
    expect(page.find('own-part')).not.toBeNull();
  });

  test('is changed in volume and unit together', async () => {
    const page = await open('enter-packet-review', ['review-change', 'change-volume']);
    for (const tap of ['choose-US quart', 'key-2', 'unit-US quart']) page.click(tap);
    expect(lines()).toContain('Made up to: 2 US quarts');
  });

  test('whose gross mass was entered as its active is refused where it is entered', async () => {
    const page = await open('enter-packet-gross-for-active');
    expect(page.text('contradiction')).toBe(
      'the active weighs less than the whole powder: is the gross mass in its place?',
    );
    page.click('again-active');
    for (const key of ['4', '6', 'point', '8']) page.click(`key-${key}`);
    page.click('unit-g');
    expect(page.find('contradicts')).toBeNull();
    expect(page.find('choose-US quart')).not.toBeNull();
    page.click('back');
    expect(lines().slice(0, 2)).toEqual(['Whole packet: 52 g', 'Active in it: 46.8 g']);
  });

  test('of a quart mixed up with a gallon contradicts the strength printed for it', async () => {
    const page = await open('enter-packet-volume', ['choose-US gallon', 'key-1', 'unit-US gallon']);
    for (const key of ['1', '2', 'point', '4']) page.click(`key-${key}`);
    page.click('unit-mg/mL');
    expect(page.text('contradiction')).toContain('wrong volume');
    page.click('again-volume');
    for (const tap of ['choose-US quart', 'key-1', 'unit-US quart']) page.click(tap);
    // 11.7 g in a US quart is 12.363 mg/mL, which the label rounds.
    expect(page.find('ask-jug-life')).not.toBeNull();
  });
});

describe('a bottle', () => {
  test.each([
    [['key-4', 'key-point', 'key-5', 'key-5', 'unit-%'], null],
    [
      ['key-4', 'key-point', 'key-4', 'key-5', 'unit-%'],
      'the percentage is not the strength in mg/mL: 10 mg/mL are 1 %.',
    ],
  ])('of 45.5 mg/mL with %j', async (taps, says) => {
    const page = await open('enter-bottle-twin', taps);
    if (says === null) expect(page.find('ask-size')).not.toBeNull();
    else expect(page.text('contradiction')).toBe(says);
  });

  test('is kept with both of its strengths', async () => {
    const page = await open('enter-bottle-review');
    holdDown(page, 'review-keep');
    expect(sent(page)).toMatchObject([
      { presentation: { form: 'liquid', mgPerMl: 45.5, percent: 4.55, bottleMl: 250, openLifeDays: null } },
    ]);
  });

  test('of more than a hundred percent is refused with what is taken', async () => {
    const page = await open('enter-bottle-twin', ['key-4', 'key-5', 'key-5', 'unit-%']);
    expect(page.text('contradiction')).toContain('no more than 100');
  });
});

describe('a rule', () => {
  test('is asked for one thing at a time, shown whole, and kept by one held press', async () => {
    const page = await open('enter-rule-review');
    expect(lines()).toContain('Never above: 12 mg/kg, guard');
    expect(lines()).toContain('Not younger than: 4 months');
    holdDown(page, 'review-keep');
    expect(sent(page)).toMatchObject([
      {
        type: 'keep-rule',
        medicineId: 'levamisole',
        rule: {
          species: 'sheep',
          use: 'label',
          presentationId: null,
          route: 'oral drench',
          mgPerKg: 8,
          mgPerLb: 3.63,
          ceiling: null,
          floor: null,
          repeatDays: 21,
          meat: { kind: 'days', days: 7 },
          milk: { kind: 'not-for-people' },
          minAgeDays: 124,
          minWeightKg: null,
          pregnancy: { afterBredDays: 45, afterMalesDays: 45 },
          milkers: 'not-dairy',
        },
      },
    ]);
  });

  test('that is in leads on to its approval', async () => {
    const page = await open('enter-rule-review');
    holdDown(page, 'review-keep');
    page.patch({ shed: withOwn({ rule: true }).shed });
    expect(page.text('kept')).toContain('approves');
    page.click('kept-approve');
    const rule = await soon(() => page.get('regimen'));
    expect(rule.dataset['approved']).toBe('false');
  });

  test('of 0.2 mg/kg printed as 0.91 mg/lb is refused where it is entered', async () => {
    const page = await open('enter-rule-contradicts');
    expect(page.text('contradiction')).toContain('the two rates disagree');
    page.click('again-target-twin');
    expect(page.find('ask-target-twin')).not.toBeNull();
    for (const key of ['0', 'point', '0', '9', '1']) page.click(`key-${key}`);
    page.click('unit-mg/lb');
    expect(page.find('ask-ceiling')).not.toBeNull();
  });

  test('whose rate is entered again in the other unit is asked for its twin anew', async () => {
    const page = await open('enter-rule-contradicts', ['again-target', 'key-9', 'unit-mg/lb']);
    expect(page.text('ask-target-twin')).toContain('mg/kg');
  });

  test.each([
    ['unit-mg/kg', 'ceiling', 'the ceiling lies above the target.'],
    ['unit-mg/lb', 'ceiling', null],
  ])('with a ceiling of 8 by %s above a rate of 8 mg/kg', async (unit, id, says) => {
    const page = await open('enter-rule-ceiling', ['key-8', unit]);
    if (says === null) expect(page.find('ask-floor')).not.toBeNull();
    else {
      expect(page.text('contradiction')).toBe(says);
      expect(page.find(`again-${id}`)).not.toBeNull();
    }
  });

  test('that keeps no milk back is refused, and unknown is not nothing', async () => {
    const page = await open('enter-rule-milk-none');
    expect(page.text('contradiction')).toContain('never nothing');
    page.click('again-milk');
    page.click('instead-unknown');
    expect(page.find('contradicts')).toBeNull();
  });

  test('ten times what is known is looked at twice before it is kept', async () => {
    const page = await open('enter-rule-far');
    expect(page.text('review-warning')).toContain('80 mg/kg is far from the 8 mg/kg');
    await page.close();
    expect((await open('enter-rule-review')).find('review-warning')).toBeNull();
  });

  test('half asked shows what is still to come, and goes on from there', async () => {
    const page = await open('enter-rule-begun');
    expect(page.find('review-keep')).toBeNull();
    page.click('review-next');
    expect(page.find('ask-target')).not.toBeNull();
  });

  test('is changed in one answer, and shown whole again', async () => {
    await open('enter-rule-change', ['change-species', 'choose-goat']);
    expect(lines()[0]).toBe('For: Goat');
    expect(lines()).toContain('Rate: 8 mg/kg');
  });
});

describe('what the farm added', () => {
  test('is taken out of use by a held press', async () => {
    const page = await open('own-packet');
    page.click('own-retire');
    expect(sent(page)).toEqual([]);
    holdDown(page, 'own-retire');
    expect(sent(page)).toMatchObject([{ type: 'retire-own', ownId: 'own-levamisole-packet-1' }]);
  });

  test('stays while it is approved, and says why', async () => {
    const page = await open('own-rule-approved');
    expect(page.get('own-retire')).toHaveProperty('disabled', true);
    expect(page.text('own-part-page')).toContain('Withdraw the approval first');
  });

  test('is found from the dose rules', async () => {
    const page = await open('shed-rules', ['own-medicines', 'medicine-levamisole', 'add-bottle']);
    expect(page.find('ask-strength')).not.toBeNull();
  });

  test('and what it cannot enter by taps is told', async () => {
    const page = await open('own-list', ['page-after', 'medicine-other']);
    expect(page.text('other-medicine')).toContain('medicines.json');
  });
});

describe('an approval', () => {
  test('off the label is never given on the label in hand', async () => {
    const page = await open('shed-approve');
    expect(page.get('approve-label')).toHaveProperty('disabled', true);
  });

  test('is withdrawn by a held press alone', async () => {
    const page = await open('shed-rule-approved');
    page.click('withdraw-approval');
    expect(sent(page)).toEqual([]);
    holdDown(page, 'withdraw-approval');
    expect(sent(page)).toMatchObject([{ type: 'withdraw-approval', regimenId: 'levamisole-sheep' }]);
  });
});

describe('the veterinarian', () => {
  const approved = { type: 'approve', regimenId: 'levamisole-goat', direction: 'veterinarian' } as const;

  test('is picked from the names used before', async () => {
    const page = await open('vet-pick', ['vet-tile']);
    holdDown(page, 'approve-vet');
    expect(sent(page)).toMatchObject([{ ...approved, vet: 'Dr Yarrow' }]);
  });

  test('is spelled by letter tiles where the name is new', async () => {
    const page = await open('vet-letters', ['letter-Y', 'letters-A–J', 'letter-E', 'letters-done']);
    await soon(() => page.get('approve-vet'));
    holdDown(page, 'approve-vet');
    expect(sent(page)).toMatchObject([{ ...approved, vet: 'Dr Ye' }]);
  });

  test('may be left unnamed; the days given count either way', async () => {
    const page = await open('shed-approve-vet');
    page.click('approve-vet');
    expect(sent(page)).toEqual([]);
    holdDown(page, 'approve-vet');
    expect(sent(page)).toEqual([
      {
        ...approved,
        id: expect.any(String),
        meatHours: null,
        milkHours: null,
        meatDays: null,
        milkDays: 2,
        targetMgPerKg: null,
        vet: null,
      },
    ]);
  });

  test('not meant is chosen again from the days', async () => {
    const page = await open('shed-approve-vet', ['approve-back']);
    await soon(() => page.get('pick-vet'));
  });

  test('stands with the rule that was approved', async () => {
    expect((await open('own-rule-by-vet')).text('approved')).toContain('on the word of Dr Yarrow');
  });
});

test('a letter that was not meant is erased, and a space at the end is none', async () => {
  const page = await open('vet-letters', ['letter-Y', 'letters-erase']);
  expect(page.text('spelled')).toBe('Dr');
  page.click('letters-done');
  holdDown(page, 'approve-vet');
  expect(sent(page)).toMatchObject([{ vet: 'Dr' }]);
});
