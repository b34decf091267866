import { describe, expect, test } from 'vitest';
import { OFFICE_WORDS } from '../../../server/office/office-words.ts';
import { type OfficeResult, resultsOf, summaryOf } from '../../../server/office/test-results.ts';
import { testsPage } from '../../../server/office/tests-page.ts';
import { printingIn } from '../../../server/print/printing.ts';
import { wholeTest } from '../make/worm-test.ts';

const judged = (verdict: NonNullable<OfficeResult['judged']>['verdict']) => ({
  verdict,
  reduction: 0.845,
  lower: 0.7,
  upper: 0.91,
  animals: 10,
});

const result = (over: Partial<OfficeResult> = {}): OfficeResult => ({
  farm: 'hill',
  area: 'North',
  active: 'levamisole',
  medicine: 'Levamisole <own>',
  species: 'goat',
  treatedAtMs: Date.UTC(2027, 3, 12),
  judged: judged('resistant'),
  ...over,
});

describe('what worked, of several farms', () => {
  const results = [
    result(),
    result({ farm: 'dale', judged: judged('susceptible') }),
    result({ farm: 'moor', area: 'South' }),
    result({ active: 'ivermectin', judged: null }),
    result({ species: 'sheep' }),
  ];

  test('is counted by active, species and area', () => {
    const counts = summaryOf(results).map(({ active, species, area, tests, verdicts }) => [
      active,
      species,
      area,
      tests,
      verdicts.resistant,
      verdicts.susceptible,
    ]);
    expect(counts).toEqual([
      ['ivermectin', 'goat', 'North', 1, 0, 0],
      ['levamisole', 'goat', 'North', 2, 1, 1],
      ['levamisole', 'goat', 'South', 1, 1, 0],
      ['levamisole', 'sheep', 'North', 1, 1, 0],
    ]);
  });

  test('is told with its limits, or that it could not be judged; what a farm wrote is only text', () => {
    const page = [...testsPage(results, true, OFFICE_WORDS.en, printingIn('en', 'UTC'))].join('');
    expect(page).toContain('84.5 % (70.0 to 91.0)');
    expect(page).toContain('could not be judged');
    expect(page).toContain('<td>moor</td>');
    expect(page).toContain('Levamisole &lt;own&gt;');
    expect(page).not.toContain('<own>');
  });
});

test('a finished test of a farm is a result of it', () => {
  const ten = (eggs: number) => Array.from({ length: 10 }, () => eggs);
  const { barn } = wholeTest(ten(40), ten(30));
  expect(resultsOf(barn.barn.context, { farm: 'hill', area: 'North' })).toMatchObject([
    {
      farm: 'hill',
      area: 'North',
      species: 'goat',
      judged: { verdict: 'resistant', reduction: 0.25, animals: 10 },
    },
  ]);
  barn.store.close();
});
