import { accessSync, constants, existsSync, mkdirSync, rmdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** A quarter of a core, told out in slices of 100 ms as the kernel does it: a stand-in for a small board. */
const QUOTA_US = 25_000;
const PERIOD_US = 100_000;

/** Where the kernel takes such a limit: the older tree of control groups or the newer one. */
const TREES = [
  {
    root: '/sys/fs/cgroup/cpu',
    write: (group: string) => {
      writeFileSync(join(group, 'cpu.cfs_period_us'), String(PERIOD_US));
      writeFileSync(join(group, 'cpu.cfs_quota_us'), String(QUOTA_US));
    },
  },
  {
    root: '/sys/fs/cgroup',
    write: (group: string) => writeFileSync(join(group, 'cpu.max'), `${QUOTA_US} ${PERIOD_US}`),
  },
];

/** A limit that programs are started under. */
export interface QuarterCore {
  /** What stands before a command so that it and all it starts are limited together. */
  readonly before: readonly string[];
  /** Takes the limit away, once nothing runs under it. */
  remove(): void;
}

/** Makes such a limit, or comes to `null` where this machine lets nobody set one. */
export function quarterCore(): QuarterCore | null {
  for (const { root, write } of TREES) {
    const group = join(root, `byreside-bench-${process.pid}`);
    try {
      if (!existsSync(join(root, 'cgroup.procs'))) continue;
      accessSync(root, constants.W_OK);
      mkdirSync(group);
      write(group);
    } catch {
      if (existsSync(group)) rmdirSync(group);
      continue;
    }
    const enter = `echo $$ > ${group}/cgroup.procs && exec "$0" "$@"`;
    return { before: ['sh', '-c', enter], remove: () => rmdirSync(group) };
  }
  return null;
}
