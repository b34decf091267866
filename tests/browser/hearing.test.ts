import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { grams } from '../../core/quantity/mass.ts';
import { digitByDigit, readBackWords } from '../../core/speech/read-back.ts';
import { findEngine } from '../../hardware/ear/engine.ts';
import { EAR_RATE } from '../../hardware/ear/pcm.ts';
import { wavOfSamples } from '../../hardware/mouth/wav.ts';
import { systemTimers } from '../../hardware/serial/timers.ts';
import { createSimulatedBarn, type SimulatedBarn } from '../../hardware/simulator/barn.ts';
import { seededRandom } from '../../hardware/simulator/random.ts';
import type { KioskState } from '../../shared/state.ts';
import { noiseAtLevel, speechAtLevel } from '../bench/voice/mix.ts';
import { SPEAKERS, speak } from '../bench/voice/speakers.ts';
import { has, type KioskProcess, startKiosk } from '../process/kiosk-process.ts';
import { furnish, JUG_GRAMS, SPOKEN } from '../process/spoken-farm.ts';
import { CHROMIUM, type KioskPage, openKiosk } from './kiosk-page.ts';

const CAN = existsSync(CHROMIUM) && findEngine() !== null && has('socat') && has('flite') && has('espeak-ng');
const [EWE] = SPOKEN;
const SNR_DB = 10;
/** How long a take lasts, and how many there are: a busy machine is late for the first. */
const TAKE_SECONDS = 6;
const TAKES = 9;

let folder: string;
let barn: SimulatedBarn;
let server: KioskProcess;

beforeAll(async () => {
  if (!CAN) return;
  folder = mkdtempSync(join(tmpdir(), 'byreside-hearing-'));
  barn = await createSimulatedBarn({ timers: systemTimers(), seed: 5, folder: join(folder, 'tty') });
  furnish(folder);
  server = await startKiosk({
    BYRESIDE_DATA: folder,
    BYRESIDE_PLATFORM: `${barn.paths.platform},st-gs,9600`,
    BYRESIDE_BENCH: `${barn.paths.bench},sma`,
    BYRESIDE_WAND: barn.paths.wand,
  });
  barn.bench.placeJug(grams(JUG_GRAMS));
  await server.send({ type: 'safety-read' });
  await server.until((s) => s.bench.steady && s.bench.live === JUG_GRAMS, 'the jug at rest');
});

afterAll(async () => {
  server?.child.kill('SIGTERM');
  await barn?.stop();
});

/** Voices of the bench, in turn: one alone may never be understood. */
const VOICES = [0, 1, 3, 4];

/** A sound file of keepers in a barn who say the same again and again. */
function fileOf(words: readonly string[]): string {
  const samples = noiseAtLevel('pink', SNR_DB, TAKES * TAKE_SECONDS * EAR_RATE, seededRandom(7));
  for (let take = 0; take < TAKES; take += 1) {
    const speaker = SPEAKERS[VOICES[take % VOICES.length] ?? 0];
    if (speaker === undefined) throw new Error('no such speaker');
    const from = Math.round((take + 0.4) * TAKE_SECONDS * EAR_RATE);
    speechAtLevel(speak(speaker, words.join(' '))).forEach((sample, at) => {
      samples[from + at] = (samples[from + at] ?? 0) + sample;
    });
  }
  const path = join(folder, `${words.join('-')}.wav`);
  writeFileSync(
    path,
    wavOfSamples(
      Float32Array.from(samples, (sample) => sample / 32_768),
      EAR_RATE,
    ).bytes,
  );
  return path;
}

/**
 * Opens the kiosk's page with a microphone that hears these, holds Talk until they came to something, and answers what
 * the light showed; `before` is done once the page stands. The clock of the file begins when the page opens its microphone, so each asking has a page of its own.
 */
async function ask(
  words: readonly string[],
  place: string,
  done: (state: KioskState, page: KioskPage) => boolean | Promise<boolean>,
  before: () => Promise<unknown> = async () => {},
): Promise<Set<string>> {
  const page = await openKiosk(`${server.base}/#${place}`, [
    '--autoplay-policy=no-user-gesture-required',
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-audio-capture=${fileOf(words)}%noloop`,
  ]);
  const lights = new Set<string>();
  try {
    await page.page.getByTestId('talk').waitFor();
    await server.until(({ voice }) => voice.heard === 'heard', 'a page that is heard');
    await before();
    const letGo = await page.hold('talk');
    const end = Date.now() + (TAKES * TAKE_SECONDS + 15) * 1000;
    while (!(await done(await server.state(), page))) {
      lights.add((await page.page.getByTestId('ear-light').getAttribute('data-light')) ?? 'none');
      if (Date.now() > end) {
        const { ear, round } = await server.state();
        throw new Error(`nothing came of ${JSON.stringify(words)}: ${JSON.stringify({ ear, round })}`);
      }
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    await letGo();
    expect(page.complaints).toEqual([]);
  } finally {
    await page.close();
  }
  return lights;
}

const standing = ({ round }: KioskState): string | null => ('animal' in round ? round.animal : null);

describe.skipIf(!CAN)('a page that is spoken to, through Chromium’s own microphone', () => {
  test('a whole round: a jug taken up, a sheep called, her dose given, and the screen turned', {
    timeout: 500_000,
  }, async () => {
    const lights = await ask(
      ['take', 'jug', 'number', 'one'],
      'platform',
      ({ round }) => round.step === 'visit',
    );
    expect(lights).toContain('open');

    const tag = ['tag', ...digitByDigit(EWE.name)];
    await ask(tag, 'platform', (state) => standing(state) === `sheep-${EWE.name}`);
    barn.platform.leadOn({ mass: grams(1000 * EWE.kilograms), grade: 'calm' });
    const { offer } = await server.until((s) => s.offer !== null, 'the dose');
    await ask(
      readBackWords(offer?.volumeMl ?? 0),
      'platform',
      async () => (await server.treatments()).length > 0,
    );
    expect(await server.treatments()).toMatchObject([
      { animal: `sheep-${EWE.name}`, volumeMl: offer?.volumeMl, outcome: 'whole', readBack: true },
    ]);
    await ask(['home', 'screen'], 'platform', (_, { page }) => new URL(page.url()).hash === '#home');
  });

  test('a dose given by a touch is asked about by voice', { timeout: 300_000 }, async () => {
    const [, second] = SPOKEN;
    barn.platform.walkOff();
    await server.until(({ platform }) => platform.verdict === 'empty', 'an empty platform');
    await server.send({ type: 'pick-animal', animalId: `sheep-${second.name}` });
    barn.platform.leadOn({ mass: grams(1000 * second.kilograms), grade: 'calm' });
    const { offer } = await server.until((s) => s.offer !== null, 'the dose');
    // Given once the page stands, since what happened is asked within a minute of it.
    await ask(
      ['undo', 'last', 'dose'],
      'platform',
      (_, { page }) => page.getByTestId('correcting').isVisible(),
      () => server.send({ type: 'give', offerId: offer?.id ?? '', outcome: 'whole' }),
    );
    expect(await server.treatments()).toHaveLength(2);
  });
});
