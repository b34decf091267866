import type { Clear } from '../../core/dosing/withdrawal.ts';
import { printedMonth, type RegisterLine } from '../../core/exports/register.ts';
import { type Html, html } from './html.ts';
import type { Printing } from './printing.ts';

/** What the top of the register says. */
export interface RegisterHead {
  /** The days asked for and the animal, in words. */
  readonly asked: string;
  readonly printedAtMs: number;
  readonly printing: Printing;
  readonly back: string;
}

/** The treatment register as a page for A4, piece by piece: as long as it may be, no more than a line of it is held. */
export function* registerPage(lines: Iterable<RegisterLine>, head: RegisterHead): Generator<string> {
  const { asked, printedAtMs, printing, back } = head;
  const { register: words, time, language } = printing;
  yield html`<!doctype html>
<html lang="${language}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${words.title}</title><link rel="stylesheet" href="/print/register.css"></head>
<body>
<nav><a href="${back}" id="back">${words.back}</a><button type="button" id="print">${words.print}</button></nav>
<main><h1>${words.title}</h1><p>${asked}. ${words.printed(time(printedAtMs))}. ${words.law}</p>
`.html;
  yield* registerTable(lines, printing);
  yield html`</main>
<script src="/print/print.js"></script>
</body>
</html>
`.html;
}

/** The register's table, with how many treatments stand in it, piece by piece. */
export function* registerTable(lines: Iterable<RegisterLine>, printing: Printing): Generator<string> {
  const { register: words } = printing;
  const columns = Object.values(words.columns).map((name) => html`<th>${name}</th>`);
  yield html`<table><thead><tr>${columns}</tr></thead><tbody>
`.html;
  let count = 0;
  for (const line of lines) {
    count += 1;
    yield rowOf(line, printing).html;
  }
  yield html`</tbody></table><p>${count === 0 ? words.none : words.count(count)}</p>`.html;
}

function lotOf({ lot, expiresAtMs }: RegisterLine['medicine'], { register }: Printing): string {
  return expiresAtMs === null ? '' : `; ${register.lot(lot, printedMonth(expiresAtMs))}`;
}

function rowOf(line: RegisterLine, printing: Printing): Html {
  const { animal, medicine, mixed, dose, weight } = line;
  const { register: words, time: day, shipped } = printing;
  const until = (clear: Clear): string => (clear.kind === 'at' ? day(clear.atMs) : words.clear[clear.kind]);
  const from =
    mixed === null ? words.bottle : words.mixed(mixed.powderGrams, mixed.waterMl, mixed.by, day(mixed.atMs));
  const cells: Record<keyof typeof words.columns, Html> = {
    given: html`<b>${day(line.givenAtMs)}</b>${line.clockTrusted ? '' : ` (${words.provisional})`}`,
    animal: html`<b>${animal.name}</b><br>${animal.tag ?? words.noTag}<br>${words.animal(animal)}`,
    weight: html`${weight.kilograms.toFixed(2)} kg, ${words.scale}`,
    medicine: html`<b>${shipped(medicine.name)}</b><br>${shipped(medicine.active)}, ${medicine.mgPerMl.toFixed(2)} mg/mL<br>${from}${lotOf(medicine, printing)}`,
    dose: html`<b>${dose.givenMl} mL</b>${dose.outcome === 'whole' ? '' : `, ${words.kept(dose.outcome)}`}<br>${dose.targetMgPerKg} mg/kg: ${dose.computedMl.toFixed(2)} mL<br>${words.kept(dose.route)}`,
    use: html`${words.use[line.use]}${line.directedBy === null ? '' : `, ${line.directedBy}`}`,
    meat: html`${until(line.meat)}`,
    milk: html`${until(line.milk)}`,
    by: html`${line.by}`,
  };
  const beside = line.corrections.map(
    (correction) =>
      html`<tr class="beside"><td></td><td colspan="${Object.keys(cells).length - 1}">${words.corrected(correction)}</td></tr>\n`,
  );
  return html`<tr>${Object.values(cells).map((cell) => html`<td>${cell}</td>`)}</tr>\n${beside}`;
}
