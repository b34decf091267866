import type { Clear } from '../../core/dosing/withdrawal.ts';
import { printedMonth, type RegisterLine } from '../../core/exports/register.ts';
import { type Html, html } from './html.ts';
import type { Printing } from './printing.ts';

const STYLE = `
@page { size: A4 landscape; margin: 10mm; }
* { box-sizing: border-box; margin: 0; padding: 0; }
body { color: #000; background: #fff; font: 500 8pt/1.2 sans-serif; font-variant-numeric: tabular-nums; }
main { max-width: 277mm; margin: 0 auto; }
h1 { font-size: 14pt; }
p { margin: 1mm 0 2mm; }
table { width: 100%; border-collapse: collapse; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { padding: 0.8mm 1.2mm; border: 0.2mm solid #000; text-align: left; vertical-align: top; }
th { font-size: 8pt; border-bottom-width: 0.5mm; }
td b { font-size: 9pt; }
.beside td { border-top: 0; font-style: italic; }
nav { position: sticky; top: 0; display: flex; gap: 30px; padding: 16px; background: #fff; }
nav a, nav button { min-width: var(--plate); min-height: var(--plate); padding: 8px 16px; display: grid; place-items: center; border: 0.8mm solid #000; border-radius: 2mm; background: #fff; color: #000; font: 700 22px sans-serif; text-decoration: none; }
nav button { flex: 1; background: #ffc24a; }
@media print { nav { display: none; } }
`;

/** What the top of the register says. */
export interface RegisterHead {
  /** The days asked for and the animal, in words. */
  readonly asked: string;
  readonly printedAtMs: number;
  readonly printing: Printing;
  /** What a plate on the page measures, in pixels. */
  readonly platePx: number;
  readonly back: string;
}

/** The treatment register as a page for A4, piece by piece: as long as it may be, no more than a line of it is held. */
export function* registerPage(lines: Iterable<RegisterLine>, head: RegisterHead): Generator<string> {
  const { asked, printedAtMs, printing, platePx, back } = head;
  const { register: words, time, language } = printing;
  yield html`<!doctype html>
<html lang="${language}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${words.title}</title><style>:root { --plate: ${platePx}px; }${{ html: STYLE }}</style></head>
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
