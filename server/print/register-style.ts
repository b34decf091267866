/** The style sheet of the register; `platePx` is what a plate measures on the panel. */
export function registerStyle(platePx: number): string {
  return `:root { --plate: ${platePx}px; }
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
@media screen { main { padding: 0 16px 16px; } }
@media print { nav { display: none; } }
`;
}
