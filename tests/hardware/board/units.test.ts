import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const FOLDER = fileURLToPath(new URL('../../../hardware/board/', import.meta.url));
const FILES = readdirSync(FOLDER);
const UNITS = FILES.filter((name) => name.endsWith('.service'));
const SCRIPTS = FILES.filter((name) => name.endsWith('.sh') && name !== 'common.sh');
/** How exposed each unit may be by `systemd-analyze security`, 0 best, 10 worst. */
const MOST_EXPOSED: Readonly<Record<string, number>> = {
  'byreside.service': 1.9,
  // A browser draws on a graphics card, and makes sandboxes of its own by namespaces.
  'byreside-screen.service': 5,
};

const hasSystemd = spawnSync('systemd-analyze', ['--version']).status === 0;
const hasShellcheck = spawnSync('shellcheck', ['--version']).status === 0;

function unless(has: boolean, what: string, missing: string): string {
  return has ? what : `${what} (left out: no ${missing} here)`;
}

describe('the units of the board', () => {
  it.skipIf(!hasSystemd)(unless(hasSystemd, 'are in order for systemd', 'systemd-analyze'), () => {
    const folder = mkdtempSync(join(tmpdir(), 'units-'));
    try {
      for (const name of UNITS) {
        // The verifier wants the program to be there; everything else is looked at as it stands.
        const text = readFileSync(join(FOLDER, name), 'utf8').replace(/^(ExecStart=)\S+/m, '$1/bin/true');
        writeFileSync(join(folder, name), text);
      }
      const run = spawnSync('systemd-analyze', ['verify', ...UNITS.map((name) => join(folder, name))], {
        encoding: 'utf8',
      });
      expect(run.stderr).toBe('');
      expect(run.status).toBe(0);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it.skipIf(!hasSystemd).each(UNITS)('%s is no more exposed than it must be', (name) => {
    const run = spawnSync('systemd-analyze', ['security', '--offline=true', join(FOLDER, name)], {
      encoding: 'utf8',
    });
    const score = /exposure level for \S+: ([\d.]+)/.exec(run.stdout)?.[1];
    expect(Number(score)).toBeGreaterThan(0);
    expect(Number(score)).toBeLessThanOrEqual(MOST_EXPOSED[name] ?? 0);
  });

  it('have a limit on exposure each', () => {
    expect(UNITS.toSorted()).toEqual(Object.keys(MOST_EXPOSED).toSorted());
  });
});

describe('the scripts of the board', () => {
  it.skipIf(!hasShellcheck)(unless(hasShellcheck, 'pass shellcheck', 'shellcheck'), () => {
    const run = spawnSync('shellcheck', ['--external-sources', ...SCRIPTS], {
      cwd: FOLDER,
      encoding: 'utf8',
    });
    expect(run.stdout).toBe('');
    expect(run.status).toBe(0);
  });

  it.each(SCRIPTS.filter((name) => name !== 'screen.sh'))(
    '%s changes nothing for whoever is not root',
    (name) => {
      const asNobody = process.getuid?.() === 0 ? ['setpriv', '--reuid=65534', '--clear-groups'] : [];
      const [command, ...args] = [...asNobody, 'bash', join(FOLDER, name)];
      const run = spawnSync(command ?? '', args, { encoding: 'utf8' });
      expect(run.stderr).toContain('run it as root');
      expect(run.status).toBe(1);
    },
  );
});
