import type { BoardRowView, UseView } from '../../shared/board.ts';
import type { FarmRecords } from '../barn/barn-context.ts';
import { type Html, html } from '../print/html.ts';
import type { Printing } from '../print/printing.ts';
import { boardNow } from '../view/board-view.ts';
import { officeTable } from './office-page.ts';
import type { OfficeWords } from './office-words.ts';

/** Who may be milked and who may be sold, those that are kept back first, with the reason. */
export function* boardPage(farm: FarmRecords, words: OfficeWords, printing: Printing): Generator<string> {
  const rows = boardNow(farm);
  const byId = new Map(farm.memory.animals.map((animal) => [animal.id, animal]));
  const { board } = words;
  if (!farm.clock.isTrusted()) yield html`<p class="warn">${words.provisional}</p>`.html;
  const held = rows.filter((row) => !isFree(row));
  const free = rows.filter(isFree);
  const named = (id: string) => byId.get(id)?.name ?? id;
  yield html`<h2>${board.heldTitle(held.length)}</h2>`.html;
  yield held.length === 0
    ? html`<p>${rows.length === 0 ? board.nobody : board.nobodyHeld}</p>`.html
    : officeTable(
        [board.animal, board.tag, board.milk, board.meat, board.because],
        held.map(
          (row) =>
            html`<tr><th>${named(row.animal)}</th><td>${byId.get(row.animal)?.tag ?? printing.register.noTag}</td>${useCell(row.milk, words, printing)}${useCell(row.meat, words, printing)}<td>${becauseOf(row, words, printing)}</td></tr>`,
        ),
      ).html;
  if (free.length === 0) return;
  const names = free.map(({ animal }) => html`<li>${named(animal)}</li>`);
  yield html`<h2>${board.freeTitle(free.length)}</h2><ul class="names">${names}</ul>`.html;
}

const isFree = ({ milk, meat }: BoardRowView) =>
  (milk === null || milk.kind === 'free') && meat.kind === 'free';

function useCell(use: UseView | null, { board }: OfficeWords, { time }: Printing): Html {
  if (use === null) return html`<td>${board.noMilk}</td>`;
  if (use.kind === 'free') return html`<td>${board.free}</td>`;
  const said = use.kind === 'at' ? board.at(time(Date.parse(use.at)), use.provisional) : board[use.kind];
  return html`<td class="no">${said}</td>`;
}

/** What keeps an animal back: one medicine, or one for milk and another for meat. */
function becauseOf(
  { milk, meat }: BoardRowView,
  { board }: OfficeWords,
  { time, shipped }: Printing,
): string {
  const told = [milk, meat].flatMap((use) => {
    if (use === null || use.kind === 'free') return [];
    const { medicine, from } = use.because;
    return board.counted(shipped(medicine), time(Date.parse(from)));
  });
  return [...new Set(told)].join('; ');
}
