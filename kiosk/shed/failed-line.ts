import type { FailedTestView } from '../../shared/reduction-test.ts';
import type { RegimenView } from '../../shared/shed.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';
import type { RegimenLine } from './regimen-lines.ts';

/** What the last test on this farm told of a rule's medicine in its species, where it failed; else no line. */
export function failedLines(
  { active, species }: Pick<RegimenView, 'active' | 'species'>,
  failed: readonly FailedTestView[],
  words: Words,
  show: Show,
): RegimenLine[] {
  const { test } = words.wormCheck;
  return failed
    .filter((each) => each.active === active && each.species === species)
    .map(({ testId, verdict, reduction, at }) => ({
      id: `test-${testId}`,
      label: test.lastTest,
      value: test.verdict[verdict],
      evidence: test.change(reduction, show),
      text: test.lastTestSource(show.localDate(at)),
    }));
}
