import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const FILE = fileURLToPath(new URL('../../../hardware/board/99-byreside.rules', import.meta.url));
const RULES = readFileSync(FILE, 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'));
/** A key, perhaps with an attribute, an operator and a value in quotes. */
const TERM = /^(?:ACTION|SUBSYSTEM|ENV\{[A-Z_]+\}|GROUP|MODE|SYMLINK|GOTO|LABEL)(?:==|!=|\+=|=)"[^"]+"$/;

const verifies = spawnSync('udevadm', ['verify', '--help']).status === 0;

describe('the device rules', () => {
  it('are made of keys, operators and quoted values only', () => {
    for (const rule of RULES) {
      for (const term of rule.split(', ')) expect(term).toMatch(TERM);
    }
  });

  it('compare what they only look at, and set what they mean to set', () => {
    const terms = RULES.flatMap((rule) => rule.split(', '));
    expect(
      terms.filter((term) => /^(?:ACTION|SUBSYSTEM)/.test(term)).every((term) => /[=!]=/.test(term)),
    ).toBe(true);
    expect(terms).toContain('ENV{ID_MM_DEVICE_IGNORE}="1"');
    expect(terms).toContain('GROUP="byreside"');
    expect(terms).toContain('MODE="0660"');
  });

  it('give each role one name by its socket, and no two roles one socket', () => {
    const roles = RULES.filter((rule) => rule.includes('SYMLINK'));
    const names = roles.map((rule) => /SYMLINK\+="byreside\/(\w+)"/.exec(rule)?.[1]);
    const sockets = roles.map((rule) => /ENV\{ID_PATH\}=="([^"]+)"/.exec(rule)?.[1]);
    expect(names).toEqual(['platform', 'bench', 'wand']);
    expect(new Set(sockets).size).toBe(3);
  });

  it('jump only to a label that exists', () => {
    const jumps = RULES.flatMap((rule) => /GOTO="(\w+)"/.exec(rule)?.[1] ?? []);
    expect(jumps.length).toBeGreaterThan(0);
    for (const label of jumps) expect(RULES).toContain(`LABEL="${label}"`);
  });

  it.skipIf(!verifies)(
    verifies ? 'pass the verifier of the system' : 'pass the verifier of the system (left out: none here)',
    () => {
      expect(spawnSync('udevadm', ['verify', '--no-style', FILE]).status).toBe(0);
    },
  );
});
