import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ensureBuilt } from '../../server/launch/build.mjs';
import { ensureInstalled } from '../../server/launch/install.mjs';
import { ensurePackages, NEEDS } from '../../server/launch/packages.mjs';
import { ROOT } from '../../server/launch/stamp.mjs';

// `npm run soak [-- cycles]`: pulls and plugs the cable of a simulated scale, 500 times unless told otherwise.
// `npm run soak -- fuzz [bytes]`: noise, torn and whole frames for every decoder, five million bytes each.
// `npm run soak -- requests [inputs]`: made-up requests and messages of strangers and devices, 200,000 of them.
// `npm run soak -- newcomer [animals]`: a jug mixed and five animals dosed in the demo, by touch alone.
// `npm run soak -- monkey [touches]`: random touches on each screen of the built kiosk, ten thousand each.
// `npm run soak -- screens [names] [part...]`: every scene on every panel, in every face and language, and what is wrong
// with it; a part is a panel ("1024x600"), a face ("glare") or words ("pseudo"), and leaves out the others of its kind.
// `npm run soak -- kill [times] [seed]`: kills the kiosk at work, 2,000 times, and holds the disk against what it acknowledged.
// `npm run soak -- day [hours]`: lives a day of a full barn, faster than it passes.
// `npm run soak -- storm [seconds]`: noise at full line rate and a cable pulled every 100 ms, for five minutes.
// `npm run soak -- board [suite]`: installs the kiosk into a new Debian, bookworm unless told otherwise; wants root.
// `npm run soak -- hub [schedules]`: kiosks with real records and a hub on PostgreSQL, cut and crashed at random, 100 times.
// `npm run soak -- hub-kill [schedules]`: kiosks, hub and PostgreSQL as processes, killed at work, 100 times four crashes.
ensurePackages(NEEDS.test);
ensureInstalled();
const { runnerImport } = await import('vite');
const load = async (file) =>
  (await runnerImport(join(ROOT, file), { root: ROOT, configFile: false, logLevel: 'error' })).module;

async function fuzz(bytesEach) {
  const { fuzzAll } = await load('tests/hardware/fuzz.ts');
  const total = { bytes: 0, readings: 0, wrong: 0, unaccounted: 0 };
  for (const { name, bytes, readings, wrong, unaccounted } of fuzzAll(bytesEach, 1)) {
    console.log(`${name.padEnd(26)} ${bytes} bytes, ${readings} readings, ${wrong.length} wrong`);
    total.bytes += bytes;
    total.readings += readings;
    total.wrong += wrong.length;
    total.unaccounted += unaccounted;
  }
  console.log(total);
  return total.wrong === 0 && total.unaccounted === 0;
}

async function requests(inputs) {
  const { fuzzRequests } = await load('tests/server/security/fuzz-requests.ts');
  const report = await fuzzRequests(inputs, 2);
  console.log(report);
  return report.faults.length === 0 && report.changes === 0;
}

async function cables(cycles) {
  const { soak } = await load('tests/hardware/soak.ts');
  const report = await soak(cycles);
  console.log(report);
  return (
    report.readyAgain === cycles && report.stale === 0 && report.queued === 0 && report.leakedDescriptors <= 1
  );
}

async function newcomer(animals) {
  await ensureBuilt();
  const args = ['run', '--config', 'tests/vitest.config.ts', 'tests/browser/newcomer.test.ts'];
  const env = { ...process.env, BYRESIDE_TEST_ANIMALS: String(animals) };
  return spawnSync('node_modules/.bin/vitest', args, { cwd: ROOT, env, stdio: 'inherit' }).status === 0;
}

async function monkey(touches) {
  await ensureBuilt();
  const { touchLong } = await load('tests/browser/touch-long.ts');
  const reports = await touchLong(touches, ({ screen, touches, doses, seconds, faults }) => {
    console.log(
      `${screen.padEnd(12)} ${touches} touches in ${seconds} s, ${doses} doses, ${faults.length} faults`,
    );
    for (const fault of faults) console.log(`  ${fault}`);
  });
  return reports.every(({ faults }) => faults.length === 0);
}

async function screens(only, parts) {
  const { openGallery } = await load('tests/browser/gallery/walk.ts');
  const { PANELS, PHONES } = await load('tests/browser/gallery/panels.ts');
  const { allFaults } = await load('tests/browser/gallery/all-faults.ts');
  const { ON_PHONE_SCENES, SCENES } = await load('tests/kiosk/preview/scenes.ts');
  const asked = (all, nameOf = (each) => each) => {
    const named = all.filter((each) => parts.includes(nameOf(each)));
    return named.length > 0 ? named : all;
  };
  const shown = {
    faces: asked(['dim', 'glare']),
    words: asked(['en', 'es', 'pseudo']),
    look: allFaults,
  };
  const named = (scenes) => scenes.filter(({ name }) => only.test(name));
  const gallery = await openGallery();
  const panels = asked(PANELS, ({ widthPx, heightPx }) => `${widthPx}x${heightPx}`);
  const faults = [
    ...(await gallery.walk({ ...shown, scenes: named(SCENES), panels }, 3)),
    ...(await gallery.walk({ ...shown, scenes: named(ON_PHONE_SCENES), panels: PHONES })),
  ];
  await gallery.close();
  for (const fault of faults) console.log(fault);
  console.log(`${faults.length} faults`);
  return faults.length === 0;
}

/** Kills in one farm's life: each start reads and each look reckons with all its records, so a long one is slow. */
const KILLS_A_FARM = 200;

async function kills(count, seed) {
  await ensureBuilt();
  const { killMany } = await load('tests/fault/kill.ts');
  const total = {
    kills: 0,
    acknowledged: 0,
    inFlight: 0,
    writtenUnheard: 0,
    lost: 0,
    miscounted: 0,
    halves: 0,
  };
  for (let left = count; left > 0; left -= KILLS_A_FARM) {
    const report = await killMany(Math.min(left, KILLS_A_FARM), seed + left);
    for (const [what, much] of Object.entries(report)) total[what] += much.length ?? much;
    const wrong = [...report.lost, ...report.miscounted, ...report.halves];
    console.log(`${total.kills} kills`, wrong);
  }
  console.log(total);
  return total.lost + total.miscounted + total.halves === 0;
}

/** What the kiosk may grow by from the first quarter of a day to its last: the doses it remembers, and no more. */
const DAY_GROWS_MB = 16;

async function day(hours) {
  const { liveHours } = await load('tests/server/whole-day.ts');
  const report = liveHours(hours);
  console.log(report);
  const { first, last, failures } = report;
  const flat = last.heapMb - first.heapMb < DAY_GROWS_MB && last.descriptors <= first.descriptors + 1;
  return flat && failures.length === 0;
}

async function devicesStorm(seconds) {
  await ensureBuilt();
  const { storm } = await load('tests/fault/storm.ts');
  const report = await storm(seconds, 7);
  console.log(report);
  const { before, after, asked, answered, weightsShown } = report;
  const flat = after.residentMb - before.residentMb < 40 && after.descriptors - before.descriptors <= 6;
  return flat && answered === asked && weightsShown === 0;
}

async function board(suite) {
  ensurePackages(NEEDS.board);
  const { installInto } = await load('tests/hardware/board/install.ts');
  const found = await installInto(suite, 4391, console.log);
  return found.length > 0 && found.every(({ good }) => good);
}

async function hub(schedules) {
  const { startPostgres } = await load('tests/server/make/postgres.ts');
  const { runSchedules } = await load('tests/server/hub/schedules.ts');
  const postgres = await startPostgres();
  try {
    const report = await runSchedules(postgres, schedules, 1);
    console.log(report);
    return report.lost.length + report.doubled.length + report.apart.length === 0;
  } finally {
    await postgres.stop();
  }
}

async function hubKills(schedules) {
  await ensureBuilt();
  const { crashSharedHerd } = await load('tests/fault/shared-herd.ts');
  const report = await crashSharedHerd(schedules, 1, (done) => {
    if (done % 10 === 0) console.log(`${done} schedules`);
  });
  console.log(report);
  return report.wrong.length === 0;
}

const [what, much, ...more] = process.argv.slice(2);
const forms = {
  hub: () => hub(Number(much ?? 100)),
  'hub-kill': () => hubKills(Number(much ?? 100)),
  board: () => board(much ?? 'bookworm'),
  day: () => day(Number(much ?? 24)),
  fuzz: () => fuzz(Number(much ?? 5_000_000)),
  requests: () => requests(Number(much ?? 200_000)),
  kill: () => kills(Number(much ?? 2000), Number(more[0] ?? 1)),
  storm: () => devicesStorm(Number(much ?? 300)),
  monkey: () => monkey(Number(much ?? 10_000)),
  newcomer: () => newcomer(Number(much ?? 5)),
  screens: () => screens(new RegExp(much ?? '.'), more),
};
const good = await (forms[what]?.() ?? cables(Number(what ?? 500)));
process.exit(good ? 0 : 1);
