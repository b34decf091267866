import { readFileSync } from 'node:fs';

/** Ticks of the clock that Linux counts a process's work in, a second. */
export const TICKS_A_SECOND = 100;

/** The work a process has done since it began, in ticks. */
export function ticksOf(pid: number | undefined): number {
  // The name of the program may hold spaces; what follows its closing bracket does not.
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
  return Number(fields[11]) + Number(fields[12]);
}

/** Resident megabytes of a process, this one where none is named. */
export function residentMb(pid: number | 'self' | undefined = 'self'): number {
  const kB = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return Number(kB) / 1024;
}
