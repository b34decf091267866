import { spawnSync } from 'node:child_process';
import { has } from './shell.mjs';

const SPEECH = {
  command: 'espeak-ng',
  package: 'espeak-ng',
  without: 'the kiosk speaks only where its browser can',
};

/**
 * Debian packages each job needs: the command that proves one is there, the package that brings it, and what is
 * lost without it.
 */
export const NEEDS = {
  build: [
    { command: 'python3', package: 'python3', without: 'the database module cannot be compiled' },
    { command: 'make', package: 'make', without: 'the database module cannot be compiled' },
    { command: 'g++', package: 'g++', without: 'the database module cannot be compiled' },
  ],
  demo: [
    {
      command: 'socat',
      package: 'socat',
      without: 'the demo runs its scales in memory, not on pseudo-terminals',
    },
    SPEECH,
  ],
  test: [
    { command: 'socat', package: 'socat', without: 'the tests on pseudo-terminals are skipped' },
    { command: 'chromium', package: 'chromium', without: 'the browser tests are skipped' },
    { ...SPEECH, without: 'the tests of its voices are skipped' },
  ],
};

/** Installs what is missing through apt, as root or with sudo; otherwise says what is missing and what that costs. */
export function ensurePackages(needs) {
  const missing = needs.filter((need) => !has(need.command));
  if (missing.length === 0) return;
  const names = [...new Set(missing.map((need) => need.package))];
  const asRoot = process.getuid?.() === 0 ? [] : has('sudo') ? ['sudo', '-n'] : null;
  if (asRoot !== null && has('apt-get')) {
    console.log(`Installing ${names.join(', ')} …`);
    apt(asRoot, ['update', '-qq']);
    apt(asRoot, ['install', '-y', '-qq', '--no-install-recommends', ...names]);
  }
  for (const need of missing.filter((candidate) => !has(candidate.command))) {
    console.log(
      `Missing: ${need.package}. Without it ${need.without}. Install it with: apt-get install ${need.package}`,
    );
  }
}

function apt(asRoot, args) {
  const [command, ...rest] = [...asRoot, 'apt-get', ...args];
  spawnSync(command, rest, {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
}
