import { type DoseTableRow, doseTable, tableWeights } from '../../core/dosing/dose-table.ts';
import type { Syringe } from '../../core/dosing/syringe.ts';
import type { Approval } from '../../core/medicine/approval.ts';
import type { RegimenInForce } from '../../core/medicine/in-force.ts';
import type { Withdrawal } from '../../core/medicine/withdrawal.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import { massIn } from '../../core/quantity/mass.ts';
import { showNumber, showRate, showVolume } from '../../core/quantity/show.ts';
import { mgPerKg } from '../../core/quantity/strength.ts';
import { type Html, html } from './html.ts';
import type { PrintWords } from './print-words.ts';
import type { Printing } from './printing.ts';

/** A regimen a table may be printed of: one that a person has approved. */
export interface ApprovedRegimen {
  readonly regimen: RegimenInForce;
  readonly approval: Approval;
}

function withdrawalWords(withdrawal: Withdrawal, words: PrintWords): string {
  switch (withdrawal.kind) {
    case 'hours':
      return words.hours(showNumber(withdrawal.hours, 0));
    case 'days':
      return words.days(showNumber(withdrawal.days, 0));
    case 'not-for-people':
      return words.notForPeople;
    case 'unknown':
      return words.notKnown;
  }
}

function row({ weight, plan }: DoseTableRow, unit: 'kg' | 'lb', words: PrintWords): Html {
  const name = `${showNumber(massIn(weight, unit), 1)} ${unit}`;
  if (plan === null) return html`<tr><th>${name}</th><td colspan="2">${words.noSyringe}</td></tr>`;
  const { draws, total, syringe } = plan;
  const mark = (volume: typeof total): string => showVolume(volume, syringe.graduation);
  const each = draws.length > 1 ? html` <small>${draws.map(mark).join(' + ')}</small>` : '';
  const size = `${showNumber(syringe.capacity.value, 1)} mL`;
  return html`<tr><th>${name}</th><td><b>${mark(total)}</b>${each}</td><td>${size}</td></tr>`;
}

/** The dose table of one approved regimen, for the jug it was printed with and the syringes on hand. */
export function printedTable(
  { regimen, approval }: ApprovedRegimen,
  jug: Jug,
  syringes: readonly Syringe[],
  unit: 'kg' | 'lb',
  { words, shipped }: Printing,
): Html {
  const rows = doseTable(regimen, jug.strength, syringes, tableWeights(regimen.species, unit));
  const rate = showRate(mgPerKg(regimen.target.value));
  const ceiling = showRate(mgPerKg(regimen.ceiling.value));
  return html`<section class="table">
    <h2>${words.tableTitle(words.species[regimen.species], rate, regimen.purpose === null ? null : shipped(regimen.purpose))}</h2>
    <p>${words.jug(jug.number)}, ${words.never(ceiling)}; ${words.approved(approval.by, words.direction[approval.direction])}.</p>
    <p><b>${words.meat(withdrawalWords(regimen.meat, words))}. ${words.milk(withdrawalWords(regimen.milk, words))}.</b></p>
    ${words.howToRead.map((line) => html`<p>${line}</p>`)}
    <table>
      <thead><tr><th>${words.weight}</th><th>${words.draw}</th><th>${words.syringe}</th></tr></thead>
      <tbody>${rows.map((each) => row(each, unit, words))}</tbody>
    </table>
  </section>`;
}
