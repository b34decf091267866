import type { FarmRecords } from '../barn/barn-context.ts';
import { EXPORTS, ExportName, registerLines } from '../exports/kinds.ts';
import { type PeriodQuery, periodAsked } from '../exports/period.ts';
import { html } from '../print/html.ts';
import { printingOf } from '../print/printing.ts';
import { registerTable } from '../print/register-page.ts';
import { boardPage } from './board-page.ts';
import { type OfficeWay, officePage } from './office-page.ts';
import { OFFICE_WORDS, type OfficeWords } from './office-words.ts';
import { resultsOf } from './test-results.ts';
import { testsPage } from './tests-page.ts';

/** A farm as an office reads it. */
export interface OfficeFarm {
  readonly records: FarmRecords;
  /** What it is called; `null` where there is only this one. */
  readonly name: string | null;
  readonly area: string | null;
  /** Where its pages stand, such as "/office", and where its files do. */
  readonly pagesAt: string;
  readonly filesAt: string;
  /** Ways that lead elsewhere. */
  readonly ways: readonly OfficeWay[];
}

/** The pages of a farm. */
export const FARM_ROOMS = ['board', 'register', 'tests'] as const;
type Room = (typeof FARM_ROOMS)[number];

/** Files an office may take along; the calendar is one person's. */
const FILES = ['register', 'weights', 'scores', 'treatment-events', 'weight-events', 'score-events'] as const;

/** A page of a farm, piece by piece, or in a sentence why what was asked for cannot be read. */
export function farmPage(
  farm: OfficeFarm,
  room: Room,
  sent: PeriodQuery,
): Generator<string> | { readonly why: string } {
  const query = daysOf(sent);
  const { records, name, area, pagesAt } = farm;
  const { memory, config, clock } = records;
  const asked = periodAsked(query, config.timeZone);
  if ('why' in asked) return asked;
  const { language } = memory.settings;
  const words = OFFICE_WORDS[language];
  const printing = printingOf(records);
  const asOf = words.asOf(printing.time(clock.now().wallMs));
  const rooms = FARM_ROOMS.map((each) => ({
    href: `${pagesAt}/${each}`,
    name: words.rooms[each],
    here: each === room,
  }));
  const frame = {
    language,
    title: words.rooms[room],
    under: [name, area, asOf].filter((part) => part !== null).join(' · '),
    ways: [...farm.ways, ...rooms],
  };
  if (room === 'board') return officePage(frame, boardPage(records, words, printing));
  if (room === 'tests') {
    const results = resultsOf(records, { farm: name ?? '', area });
    return officePage(frame, testsPage(results, false, words, printing));
  }
  return officePage(frame, register());

  function* register(): Generator<string> {
    if ('why' in asked) return;
    yield periodForm(query, words);
    yield* registerTable(registerLines(records, asked, printing.register.corrections), printing);
    yield filesOf(farm, query, words);
  }
}

/** A file of a farm with its name, or in a sentence why there is none. */
export function farmFile(
  { records, name }: Pick<OfficeFarm, 'records' | 'name'>,
  file: string,
  sent: PeriodQuery,
) {
  const known = ExportName.safeParse(file);
  if (!known.success || !FILES.some((each) => each === file))
    return { ok: false, status: 404, why: 'There is no such file.' } as const;
  const asked = periodAsked(daysOf(sent), records.config.timeZone);
  if ('why' in asked) return { ok: false, status: 400, why: asked.why } as const;
  const { ending, type, pieces } = EXPORTS[known.data];
  const fileName = [...(name === null ? ['byreside'] : [name]), file, asked.name].join('-');
  return { ok: true, type, fileName: `${fileName}.${ending}`, pieces: pieces(records, asked) } as const;
}

/** The days asked for: a form sends those that were left open too. */
function daysOf({ from, to }: PeriodQuery): PeriodQuery {
  return { ...(from ? { from } : {}), ...(to ? { to } : {}) };
}

function periodForm({ from = '', to = '' }: PeriodQuery, words: OfficeWords): string {
  return html`<form method="get"><label>${words.from}<input type="date" name="from" value="${from}"></label><label>${words.to}<input type="date" name="to" value="${to}"></label><button type="submit">${words.show}</button></form>`
    .html;
}

function filesOf({ filesAt }: OfficeFarm, query: PeriodQuery, words: OfficeWords): string {
  const days = (['from', 'to'] as const).flatMap((end) => {
    const day = query[end];
    return day === undefined ? [] : [`${end}=${encodeURIComponent(day)}`];
  });
  const asked = days.length === 0 ? '' : `?${days.join('&')}`;
  const links = FILES.map((file) => html`<a href="${filesAt}/${file}${asked}">${words.files[file]}</a>`);
  return html`<section class="files"><h2>${words.takeAlong}</h2><nav>${links}</nav></section>`.html;
}
