import { VerdictView as Verdicts, type VerdictView } from '../../shared/reduction-test.ts';
import { html } from '../print/html.ts';
import type { Printing } from '../print/printing.ts';
import { officeTable } from './office-page.ts';
import type { OfficeWords } from './office-words.ts';
import { type OfficeResult, summaryOf } from './test-results.ts';

/** Reduction tests by active and area, then each; of several farms the farm is named. */
export function* testsPage(
  results: readonly OfficeResult[],
  several: boolean,
  { tests: words }: OfficeWords,
  { time, shipped }: Printing,
): Generator<string> {
  if (results.length === 0) {
    yield html`<p>${words.none}</p>`.html;
    return;
  }
  yield html`<h2>${words.summary}</h2>`.html;
  const verdicts: readonly VerdictView[] = Verdicts.options;
  yield officeTable(
    [
      words.active,
      words.species,
      words.area,
      words.finished,
      ...verdicts.map((verdict) => words.verdicts[verdict]),
    ],
    summaryOf(results).map(
      ({ active, species, area, tests, verdicts: counts }) =>
        html`<tr><th>${shipped(active)}</th><td>${words.kinds[species]}</td><td>${area ?? words.noArea}</td><td class="number">${tests}</td>${verdicts.map((verdict) => html`<td class="number">${counts[verdict]}</td>`)}</tr>`,
    ),
  ).html;
  yield html`<h2>${words.each}</h2>`.html;
  yield officeTable(
    [
      ...(several ? [words.farm] : []),
      words.medicine,
      words.species,
      words.dosed,
      words.verdict,
      words.efficacy,
      words.animals,
    ],
    results.map(({ farm, medicine, species, treatedAtMs, judged }) => {
      const whose = several ? html`<td>${farm}</td>` : html``;
      const verdict = judged === null ? words.noVerdict : words.verdicts[judged.verdict];
      const percent = (share: number) => (share * 100).toFixed(1);
      const efficacy =
        judged === null
          ? ''
          : words.limits(percent(judged.reduction), percent(judged.lower), percent(judged.upper));
      return html`<tr>${whose}<th>${shipped(medicine)}</th><td>${words.kinds[species]}</td><td>${time(treatedAtMs)}</td><td class="no">${verdict}</td><td class="number">${efficacy}</td><td class="number">${judged?.animals ?? ''}</td></tr>`;
    }),
  ).html;
  yield html`<p>${words.source}</p>`.html;
}
