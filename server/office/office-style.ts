/** How the pages of the office look: plain, and on paper as on glass. A file of its own, so that no page needs a style within. */
export const OFFICE_STYLE = `
@page { size: A4 landscape; margin: 10mm; }
* { box-sizing: border-box; margin: 0; padding: 0; }
body { color: #000; background: #fff; font: 500 16px/1.3 "Barlow Semi Condensed", sans-serif; font-variant-numeric: tabular-nums; }
header, main { max-width: 1180px; margin: 0 auto; padding: 16px; }
nav { display: flex; flex-wrap: wrap; gap: 12px; }
nav a, button { min-height: 48px; padding: 8px 20px; display: inline-grid; place-items: center; border: 3px solid #000; border-radius: 8px; background: #fff; color: #000; font: inherit; font-size: 20px; font-weight: 700; text-decoration: none; cursor: pointer; }
nav [aria-current], form button { background: #ffc24a; }
h1 { font-size: 34px; line-height: 1.1; }
h2 { margin: 28px 0 8px; padding-top: 10px; border-top: 3px solid #000; font-size: 24px; }
p { margin: 6px 0 10px; }
table { width: 100%; border-collapse: collapse; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { padding: 5px 9px; border: 1px solid #000; text-align: left; vertical-align: top; }
thead th { border-bottom-width: 3px; }
td.no, td.number { white-space: nowrap; }
td.no { font-weight: 700; }
td.number { text-align: right; }
.beside td { border-top: 0; font-style: italic; }
.warn { padding: 8px 12px; border: 3px solid #000; font-weight: 700; }
.names { columns: 4 200px; list-style: none; }
.names li { break-inside: avoid; padding: 2px 0; }
form { display: flex; flex-wrap: wrap; align-items: end; gap: 12px; margin: 14px 0; }
label { display: grid; gap: 4px; font-weight: 700; }
input { min-height: 48px; padding: 6px 10px; border: 3px solid #000; border-radius: 8px; font: inherit; font-size: 20px; }
input[name="key"] { width: min(34em, 90vw); }
.files { margin-top: 28px; }
@media print { nav, form, .files { display: none; } body { font-size: 9pt; } header, main { max-width: none; padding: 0; } h1 { font-size: 15pt; } h2 { font-size: 12pt; margin-top: 4mm; } }
`;
