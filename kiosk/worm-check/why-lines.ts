import type { TestPage } from '../../shared/reduction-test.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

/** One line of why a result is what it is: what it says, and what stands behind it. */
export interface WhyLine {
  readonly id: string;
  readonly text: string;
  readonly behind: string;
}

/** How a test was judged, when it is sampled again, then what else may have made its result. */
export function whyLines(page: TestPage, words: Words, show: Show): WhyLine[] {
  return [...judgedLines(page, words, show), daysLine(page, words), ...confounderLines(page, words)];
}

/** The days of the second samples, from where they were read; a part that is only remembered says so there. */
function daysLine({ window: { fromDay, untilDay, source } }: TestPage, { wormCheck, shed }: Words): WhyLine {
  return { id: 'days', text: wormCheck.test.days(fromDay, untilDay), behind: shed.source(source) };
}

function judgedLines(page: TestPage, words: Words, show: Show): WhyLine[] {
  const test = words.wormCheck.test;
  const { result, dropped, untreatedFell, controlled } = page;
  const lines: WhyLine[] = [];
  if (result?.ok === true) {
    const { lowest, expected } = result.thresholds;
    const chances = result.chances;
    lines.push({
      id: 'method',
      text: test.by[result.by],
      behind:
        chances === null
          ? ''
          : test.chances(show.percent(chances.resistance), show.percent(chances.susceptibility)),
    });
    lines.push({
      id: 'rule',
      text: test.rule(show.percent(lowest), show.percent(expected)),
      behind: test.ruleFrom,
    });
    if (result.band === 'not-alone') lines.push({ id: 'alone', text: test.notAlone, behind: '' });
  }
  if (untreatedFell !== null && controlled !== null)
    lines.push({
      id: 'controlled',
      text: test.controlled(show.percent(controlled), show.percent(untreatedFell)),
      behind: test.controlledFrom,
    });
  if (dropped > 0) lines.push({ id: 'dropped', text: test.dropped(dropped), behind: '' });
  return lines;
}

function confounderLines({ confounders }: TestPage, { wormCheck: { test } }: Words): WhyLine[] {
  return confounders.map(({ confounder, doses }) => ({
    id: confounder,
    text: doses > 0 ? test.oneOrMore(doses, test.confounder[confounder]) : test.confounder[confounder],
    behind: test.confounderHint[confounder],
  }));
}
