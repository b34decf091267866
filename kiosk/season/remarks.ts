import type { SeasonView } from '../../shared/season.ts';
import type { Show } from '../words/show.ts';
import type { Words } from '../words/words.ts';

type Ready = Extract<SeasonView['outlook'], { kind: 'ready' }>;

/** What the outlook does not know, a sentence each, the gravest first; that nothing is missing where nothing is. */
export function seasonRemarks(outlook: Ready, { season }: Words, show: Show): string[] {
  const { endsDaysAgo, forecastDaysMissing, oldForecasts, measured, wanted, gapBefore, begins } = outlook;
  const remarks = [
    endsDaysAgo > 0 ? season.ends(endsDaysAgo) : '',
    forecastDaysMissing > 0 ? season.missing(forecastDaysMissing) : '',
    measured < wanted ? season.few(measured, wanted) : '',
    gapBefore > 0 ? season.gap(gapBefore, show.date(begins)) : '',
    oldForecasts > 0 ? season.old(oldForecasts) : '',
  ].filter((remark) => remark !== '');
  return remarks.length === 0 ? [season.whole] : remarks;
}
