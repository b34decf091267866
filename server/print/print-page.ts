import { type Html, html } from './html.ts';
import type { Printing } from './printing.ts';

/** What a page is printed on. */
export type Paper = 'a6' | 'roll';

/** How wide the print is, so that the page on screen is the page on paper. */
const WIDTH: Readonly<Record<Paper, string>> = { a6: '93mm', roll: '56mm' };

/** A roll is cut where the print ends: one length for the label, one for each table, whose rows wrap now and then. */
const PAGES: Readonly<Record<Paper, string>> = {
  a6: '@page { size: 105mm 148mm; margin: 6mm; }',
  roll: `@page { size: 62mm 115mm; margin: 3mm; }
@page table { size: 62mm 420mm; margin: 3mm; }
.table { page: table; }`,
};

/** What a plate on the page measures: 20 mm on the panel. */
export const PLATE_MM = 20;

function style(paper: Paper, pxPerMm: number): Html {
  const plate = `${Math.round(PLATE_MM * pxPerMm)}px`;
  return {
    html: `
${PAGES[paper]}
* { box-sizing: border-box; margin: 0; padding: 0; }
body { color: #000; background: #fff; font: 500 9.5pt/1.2 sans-serif; font-variant-numeric: tabular-nums; }
main { width: ${WIDTH[paper]}; margin: 0 auto; }
section + section { break-before: page; padding-top: 4mm; }
h1 { font-size: ${paper === 'a6' ? '15pt' : '12pt'}; line-height: 1.05; }
h2 { font-size: 13pt; line-height: 1.1; }
p { margin-top: 1.2mm; }
.head { display: flex; justify-content: space-between; gap: 2mm; }
.qr { flex: none; width: ${paper === 'a6' ? '34mm' : '26mm'}; }
.strength { font-size: ${paper === 'a6' ? '18pt' : '14pt'}; font-weight: 700; }
.number { font-size: ${paper === 'a6' ? '26pt' : '20pt'}; font-weight: 700; line-height: 1; }
.use-by { padding: 1mm 2mm; border: 0.6mm solid #000; font-size: 14pt; font-weight: 700; }
.warn { font-weight: 700; }
table { width: 100%; margin-top: 1.5mm; border-collapse: collapse; font-size: 9pt; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { padding: 0.35mm 1mm; border-bottom: 0.2mm solid #000; text-align: left; }
tbody tr:nth-child(5n) > * { border-bottom-width: 0.5mm; }
tbody th, td b, td:last-child { white-space: nowrap; }
tbody th, td b { font-size: 10.5pt; }
nav { position: sticky; top: 0; display: flex; flex-wrap: wrap; gap: 30px; padding: 16px; background: #fff; }
nav a, nav button { min-width: ${plate}; min-height: ${plate}; padding: 8px 16px; display: grid; place-items: center; border: 0.8mm solid #000; border-radius: 2mm; background: #fff; color: #000; font: 700 22px sans-serif; text-decoration: none; }
nav button { flex: 1; background: #ffc24a; }
td.toggle { text-align: right; }
.toggle a { display: inline-block; min-height: ${plate}; min-width: ${plate}; padding: 8px; border: 0.6mm solid #000; border-radius: 2mm; color: #000; font-weight: 700; text-align: center; text-decoration: none; line-height: ${Math.round(PLATE_MM * pxPerMm) - 20}px; }
nav [aria-current] { border-style: dashed; }
@media print { nav, .toggle { display: none; } section + section { padding-top: 0; } }
`,
  };
}

/** What a page that prints is made of. */
export interface PrintedPage {
  readonly title: string;
  readonly paper: Paper;
  /** What the address says besides the paper, such as "without=a"; empty where nothing. */
  readonly asked?: string;
  /** Where its plate back leads. */
  readonly back: string;
  /** Pixels in a millimetre of the panel. */
  readonly pxPerMm: number;
  readonly sections: readonly Html[];
  readonly printing: Printing;
  /** A further place to go to from it. */
  readonly onward?: { readonly href: string; readonly name: string };
}

/** A page that prints as it stands, with large plates on the screen to print it, to change the paper and to go back. */
export function printPage({
  title,
  paper,
  back,
  pxPerMm,
  sections,
  onward,
  asked = '',
  printing: { words, language },
}: PrintedPage): string {
  const at = (each: Paper): string => `?paper=${each}${asked === '' ? '' : `&${asked}`}`;
  const further = onward === undefined ? '' : html`<a href="${onward.href}" id="onward">${onward.name}</a>`;
  const papers = (['a6', 'roll'] as const).map((each) =>
    each === paper
      ? html`<a aria-current="page" data-paper="${each}" href="${at(each)}">${words.paper[each]}</a>`
      : html`<a data-paper="${each}" href="${at(each)}">${words.paper[each]}</a>`,
  );
  return html`<!doctype html>
<html lang="${language}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><style>${style(paper, pxPerMm)}</style></head>
<body>
<nav><a href="${back}" id="back">${words.back}</a>${papers}${further}<button type="button" id="print">${words.print}</button></nav>
<main>${sections}</main>
<script src="/print/print.js"></script>
</body>
</html>`.html;
}
