import { readFileSync } from 'node:fs';

/** Where desktops and small boards mount what is plugged in. */
const PLUGGED = /^\/(run\/)?media\//;
/** Octal escapes of blanks in the list of mounts. */
const ESCAPE = /\\([0-7]{3})/g;

/** Where memory sticks are mounted that may be written to, by the text of `/proc/self/mounts`. */
export function sticksIn(mounts: string): string[] {
  return mounts.split('\n').flatMap((line) => {
    const [device = '', escaped = '', , options = ''] = line.split(' ');
    const place = escaped.replaceAll(ESCAPE, (_, octal: string) =>
      String.fromCharCode(Number.parseInt(octal, 8)),
    );
    return device.startsWith('/dev/') && PLUGGED.test(place) && options.split(',').includes('rw')
      ? [place]
      : [];
  });
}

/** The memory sticks plugged in now; none where the list of mounts cannot be read. */
export function sticksNow(): string[] {
  try {
    return sticksIn(readFileSync('/proc/self/mounts', 'utf8'));
  } catch {
    return [];
  }
}
