import { DAY_MS } from '../../core/moment.ts';

/** How many backups stay: one for each of the newest days, weeks and months that have any (our own rule). */
export const STAY = { days: 7, weeks: 5, months: 12 } as const;
/** How many stay whose date nobody trusts. */
const UNDATED_STAY = 3;

const NAME = /^byreside-(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z(-undated)?\.sqlite$/;

/** A moment as it stands in names of files, to the second, in UTC. */
export function stampOf(wallMs: number): string {
  return new Date(wallMs).toISOString().replaceAll(/[-:]|\.\d+/g, '');
}

/** The name of a backup made now. The date of one made under an untrusted clock is not counted on. */
export function backupName(wallMs: number, clockTrusted: boolean): string {
  return `byreside-${stampOf(wallMs)}${clockTrusted ? '' : '-undated'}.sqlite`;
}

/** When a backup was made by its name, milliseconds since 1970; `null` where the name is none of a backup. */
export function backupDate(name: string): { readonly atMs: number; readonly trusted: boolean } | null {
  const [, year, month, day, hour, minute, second, undated] = NAME.exec(name) ?? [];
  if (year === undefined) return null;
  const atMs = Date.parse(`${year}-${month}-${day}T${hour}:${minute}:${second}Z`);
  return Number.isNaN(atMs) ? null : { atMs, trusted: undated === undefined };
}

/** Which of the files of a folder are backups that need not stay. Files of other names are nobody's business here. */
export function backupsToDrop(names: readonly string[]): string[] {
  const found = names.flatMap((name) => {
    const date = backupDate(name);
    return date === null ? [] : [{ name, ...date }];
  });
  found.sort((a, b) => b.atMs - a.atMs);
  const dated = found.filter(({ trusted }) => trusted);
  const stay = new Set([
    ...newestOfEach(dated, STAY.days, (atMs) => Math.floor(atMs / DAY_MS)),
    // Weeks begin on a Monday; the first day of 1970 was a Thursday.
    ...newestOfEach(dated, STAY.weeks, (atMs) => Math.floor((atMs / DAY_MS + 3) / 7)),
    ...newestOfEach(dated, STAY.months, (atMs) =>
      Number(new Date(atMs).toISOString().slice(0, 7).replace('-', '')),
    ),
    ...found
      .filter(({ trusted }) => !trusted)
      .slice(0, UNDATED_STAY)
      .map(({ name }) => name),
  ]);
  return found.map(({ name }) => name).filter((name) => !stay.has(name));
}

/** The newest of each period among the newest so many periods that have any. `files` come newest first. */
function newestOfEach(
  files: readonly { readonly name: string; readonly atMs: number }[],
  most: number,
  periodOf: (atMs: number) => number,
): string[] {
  const newest = new Map<number, string>();
  for (const { name, atMs } of files) {
    const period = periodOf(atMs);
    if (!newest.has(period)) newest.set(period, name);
  }
  return [...newest.values()].slice(0, most);
}
