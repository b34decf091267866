import type { Paper } from './print-page.ts';

/** How wide the print is, so that the page on screen is the page on paper. */
const WIDTH: Readonly<Record<Paper, string>> = { a6: '93mm', roll: '56mm' };

/** A roll is cut where the print ends: one length for the label, one for each table, whose rows wrap now and then. */
const PAGES: Readonly<Record<Paper, string>> = {
  a6: '@page { size: 105mm 148mm; margin: 6mm; }',
  roll: `@page { size: 62mm 115mm; margin: 3mm; }
@page table { size: 62mm 420mm; margin: 3mm; }
.table { page: table; }`,
};

/** The style sheet of a page for small paper; `platePx` is what a plate measures on the panel. */
export function labelStyle(paper: Paper, platePx: number): string {
  const plate = `${platePx}px`;
  return `
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
.toggle a { display: inline-block; min-height: ${plate}; min-width: ${plate}; padding: 8px; border: 0.6mm solid #000; border-radius: 2mm; color: #000; font-weight: 700; text-align: center; text-decoration: none; line-height: ${platePx - 20}px; }
nav [aria-current] { border-style: dashed; }
@media print { nav, .toggle { display: none; } section + section { padding-top: 0; } }
`;
}
