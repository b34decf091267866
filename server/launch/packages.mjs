import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { has } from './shell.mjs';

const SPEECH = {
  command: 'espeak-ng',
  package: 'espeak-ng',
  without: 'the kiosk speaks only where its browser can',
};

/**
 * Debian packages each job needs: the command or file that proves one is there, the package that brings it, and what
 * is lost without it.
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
  ear: [
    {
      file: '/usr/include/pocketsphinx/pocketsphinx.h',
      package: 'libpocketsphinx-dev',
      without: 'the kiosk hears nothing',
    },
    {
      file: '/usr/share/pocketsphinx/model/en-us/cmudict-en-us.dict',
      package: 'pocketsphinx-en-us',
      without: 'the kiosk hears nothing',
    },
    { command: 'pkg-config', package: 'pkg-config', without: 'the kiosk hears nothing' },
    { command: 'cc', package: 'gcc', without: 'the kiosk hears nothing' },
  ],
  voices: [
    { command: 'flite', package: 'flite', without: 'the ear is not tested with its voices' },
    { command: 'espeak-ng', package: 'espeak-ng', without: 'the ear is not tested with its voices' },
  ],
  board: [
    { command: 'debootstrap', package: 'debootstrap', without: 'there is no new system to install into' },
  ],
  test: [
    { command: 'socat', package: 'socat', without: 'the tests on pseudo-terminals are skipped' },
    { command: 'chromium', package: 'chromium', without: 'the browser tests are skipped' },
    { ...SPEECH, without: 'the tests of its voices are skipped' },
    { command: 'shellcheck', package: 'shellcheck', without: 'the scripts of the board are not checked' },
    {
      file: '/usr/share/postgresql-common/pg_wrapper',
      package: 'postgresql',
      without: 'the tests of the hub are skipped',
    },
  ],
};

/** Installs what is missing through apt, as root or with sudo; otherwise says what is missing and what that costs. */
export function ensurePackages(needs) {
  const missing = needs.filter((need) => !isThere(need));
  if (missing.length === 0) return;
  const names = [...new Set(missing.map((need) => need.package))];
  const asRoot = process.getuid?.() === 0 ? [] : has('sudo') ? ['sudo', '-n'] : null;
  if (asRoot !== null && has('apt-get')) {
    console.log(`Installing ${names.join(', ')} …`);
    apt(asRoot, ['update', '-qq']);
    apt(asRoot, ['install', '-y', '-qq', '--no-install-recommends', ...names]);
  }
  for (const need of missing.filter((candidate) => !isThere(candidate))) {
    console.log(
      `Missing: ${need.package}. Without it ${need.without}. Install it with: apt-get install ${need.package}`,
    );
  }
}

function isThere({ command, file }) {
  return file === undefined ? has(command) : existsSync(file);
}

function apt(asRoot, args) {
  const [command, ...rest] = [...asRoot, 'apt-get', ...args];
  spawnSync(command, rest, {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
}
