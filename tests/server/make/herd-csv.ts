/** A herd file of so many rows of which one in a hundred is broken, in turn by its birth, its class and its tag. */
export function herdCsv(rows: number): { readonly csv: string; readonly broken: number } {
  const lines = ['Name,Species,Class,Born,Tag,Weight (kg),Weighed'];
  let broken = 0;
  for (let at = 0; at < rows; at += 1) {
    const isBroken = at % 100 === 99;
    const kind = isBroken ? (broken++ % 3) + 1 : 0;
    const born = kind === 1 ? '2025-02-30' : '2025-02-28';
    const animalClass = kind === 2 ? 'unicorn' : 'doe';
    const tag = kind === 3 ? '8.40003E+14' : `840${String(at).padStart(12, '0')}`;
    lines.push(`N${at},goat,${animalClass},${born},${tag},${40 + (at % 20)}.5,2027-03-01`);
  }
  return { csv: `${lines.join('\n')}\n`, broken };
}
