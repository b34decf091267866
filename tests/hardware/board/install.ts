import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** One thing that was looked at in the new system, and whether it was so. */
export interface Finding {
  readonly what: string;
  readonly good: boolean;
  readonly detail: string;
}

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const MIRROR = 'http://deb.debian.org/debian';
/** Files by which this machine reaches others, the certificates it trusts among them. */
const FROM_HERE = ['/etc/resolv.conf', '/etc/hosts', process.env['NODE_EXTRA_CA_CERTS'] ?? ''];
/** How a new system is reached from this machine: proxies and the like. */
const PASSED_ON = /^(https?_proxy|no_proxy|npm_config_registry|SSL_CERT_FILE|NODE_EXTRA_CA_CERTS)$/i;
/** Folders of this machine that a program there wants to see. */
const LENT = ['proc', 'dev'];
const ANSWERS_WITHIN_MS = 60_000;

function must(command: string, args: readonly string[], cwd = ROOT): string {
  const run = spawnSync(command, args, { cwd, encoding: 'utf8', maxBuffer: 1e9 });
  if (run.status !== 0) throw new Error(`${command} ${args.join(' ')}: ${run.stdout}${run.stderr}`);
  return run.stdout;
}

/** A Debian of its own in a folder, with this project's sources and an archive of this machine's Node in it. */
function makeSystem(suite: string, folder: string): void {
  must('debootstrap', ['--variant=minbase', '--include=ca-certificates,systemd,udev', suite, folder, MIRROR]);
  for (const file of [...FROM_HERE, ...filesIn('/etc/apt/apt.conf.d')]) {
    if (file === '' || !existsSync(file)) continue;
    mkdirSync(join(folder, dirname(file)), { recursive: true });
    rmSync(join(folder, file), { force: true });
    copyFileSync(file, join(folder, file));
  }
  mkdirSync(join(folder, 'src'));
  must('sh', ['-c', `git ls-files -z | tar --null -T - -cf - | tar -xf - -C ${folder}/src`]);
  const prefix = dirname(dirname(process.execPath));
  // The flag leaves targets of links alone: npm is one.
  const parts = ['bin/node', 'bin/npm', 'lib/node_modules/npm', 'include/node'];
  must('tar', ['-C', prefix, '--transform=s,^,node/,S', '-cf', `${folder}/node.tar`, ...parts]);
  for (const place of LENT) {
    must('mount', ['--rbind', `/${place}`, `${folder}/${place}`]);
    // What is unmounted there stays mounted here.
    must('mount', ['--make-rslave', `${folder}/${place}`]);
  }
}

function filesIn(folder: string): string[] {
  return readdirSync(folder).map((name) => join(folder, name));
}

/** The environment of what runs in the new system. */
function surroundings(): string[] {
  const passed = Object.entries(process.env).filter(([name]) => PASSED_ON.test(name));
  return ['-i', 'PATH=/usr/sbin:/usr/bin:/sbin:/bin', ...passed.map(([name, value]) => `${name}=${value}`)];
}

function inside(folder: string, command: string): { code: number | null; said: string } {
  const args = [folder, 'env', ...surroundings(), 'bash', '-c', command];
  const run = spawnSync('chroot', args, { encoding: 'utf8', maxBuffer: 1e9 });
  return { code: run.status, said: `${run.stdout}${run.stderr}`.trim() };
}

/** Starts the kiosk as its unit would, as its own user, and answers what its health says; `null` for none. */
async function health(folder: string, port: number): Promise<string | null> {
  const unit = inside(folder, 'sed -n s/^ExecStart=//p /etc/systemd/system/byreside.service').said;
  const user = inside(folder, 'echo $(id -u byreside):$(id -g byreside)').said;
  const set = [`BYRESIDE_PORT=${port}`, 'BYRESIDE_DATA=/var/lib/byreside', 'NODE_ENV=production'];
  const args = [`--userspec=${user}`, folder, 'env', ...surroundings(), ...set, 'sh', '-c', `exec ${unit}`];
  const kiosk = spawn('chroot', args, { stdio: 'ignore' });
  const ended = new Promise((resolve) => kiosk.once('exit', resolve));
  try {
    const ends = Date.now() + ANSWERS_WITHIN_MS;
    while (Date.now() < ends && kiosk.exitCode === null) {
      const answer = await fetch(`http://127.0.0.1:${port}/api/health`).catch(() => null);
      if (answer?.ok) return await answer.text();
      await new Promise((resolve) => setTimeout(resolve, 250));
    }
    return null;
  } finally {
    kiosk.kill('SIGTERM');
    await ended;
  }
}

/**
 * Installs the kiosk into a new Debian twice, starts it there, and takes it off again.
 *
 * Wants root and `debootstrap`; some minutes and about 2 GB below the folder for temporary files. The browser is left out.
 */
export async function installInto(
  suite: string,
  port: number,
  tell: (line: string) => void,
): Promise<Finding[]> {
  const folder = mkdtempSync(join(tmpdir(), 'board-'));
  // It is the root of the new system, which everybody there walks through.
  chmodSync(folder, 0o755);
  const found: Finding[] = [];
  const is = (what: string, good: boolean, detail = '') => {
    found.push({ what, good, detail: good ? '' : detail });
    tell(`${good ? 'ok ' : 'NOT'} ${suite}: ${what}${good || detail === '' ? '' : `\n${detail}`}`);
  };
  try {
    makeSystem(suite, folder);
    const old = inside(folder, '/src/hardware/board/install.sh --no-screen --node /etc/hostname');
    is('an archive that is none is refused', old.code !== 0, old.said);
    const first = inside(folder, '/src/hardware/board/install.sh --no-screen --node /node.tar');
    is('it installs', first.code === 0, first.said);
    const list =
      'find /opt/byreside /etc/systemd /etc/udev /etc/byreside.conf -printf "%p %T@ %m %u\\n" | sort';
    const before = inside(folder, list).said;
    const again = inside(folder, '/src/hardware/board/install.sh --no-screen');
    is('it installs again', again.code === 0 && again.said.includes('in use already'), again.said);
    is('installing again changes no file', inside(folder, list).said === before);
    const enabled = join(folder, 'etc/systemd/system/multi-user.target.wants/byreside.service');
    is('it starts with the board', lstatSync(enabled, { throwIfNoEntry: false })?.isSymbolicLink() === true);
    const verified = inside(folder, 'systemd-analyze verify /etc/systemd/system/byreside.service');
    is('the unit is in order', verified.code === 0 && verified.said === '', verified.said);
    const writable = inside(
      folder,
      'runuser -u byreside -- find /opt/byreside/ -writable -not -type l | head -3',
    );
    is('what serves cannot change itself', writable.said === '', writable.said);
    const answer = await health(folder, port);
    is('the kiosk answers there', answer?.includes('"ok":true') === true, answer ?? 'no answer');
    is('it keeps its records there', existsSync(join(folder, 'var/lib/byreside/demo.sqlite')));
    inside(folder, 'echo >> /src/README.md');
    const update = inside(folder, '/src/hardware/board/install.sh --no-screen');
    is(
      'a changed tree is another release',
      update.code === 0 && update.said.includes('Building'),
      update.said,
    );
    const off = inside(folder, '/src/hardware/board/uninstall.sh');
    is('it comes off', off.code === 0 && !existsSync(join(folder, 'opt/byreside')), off.said);
    is('its records stay', existsSync(join(folder, 'var/lib/byreside')));
    const wholly = inside(folder, '/src/hardware/board/uninstall.sh --with-records && ! id byreside');
    is(
      'and go when that is said',
      wholly.code === 0 && !existsSync(join(folder, 'var/lib/byreside')),
      wholly.said,
    );
    return found;
  } finally {
    for (const place of LENT) spawnSync('umount', ['--recursive', '--lazy', `${folder}/${place}`]);
    // Should a folder of this machine still be mounted there, it is left alone.
    must('rm', ['-rf', '--one-file-system', folder]);
  }
}
