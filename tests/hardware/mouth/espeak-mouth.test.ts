import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { playOnAlsa } from '../../../hardware/mouth/alsa-player.ts';
import { EspeakMouth } from '../../../hardware/mouth/espeak-mouth.ts';
import { programFound } from '../../../hardware/mouth/find-engine.ts';
import { MouthError } from '../../../hardware/mouth/mouth.ts';
import { VOICES, voiceFor } from '../../../hardware/mouth/voices.ts';
import { finishWav, wavOfSamples } from '../../../hardware/mouth/wav.ts';

const hasEngine = spawnSync('espeak-ng', ['--version'], { stdio: 'ignore' }).status === 0;
const VOICING = { voice: 'en-us', rate: 165 };
const SOUND = wavOfSamples(new Float32Array(2205).fill(0.1), 22_050);
const open: EspeakMouth[] = [];

afterEach(() => {
  for (const mouth of open.splice(0)) mouth.stop();
});

function mouthOf(program: string): EspeakMouth {
  const mouth = new EspeakMouth({ program });
  open.push(mouth);
  return mouth;
}

/** A program that notes each line it gets, and then does what the shell text says; `$SOUND` is a WAV it may print. */
function engine(does: string) {
  const folder = mkdtempSync(join(tmpdir(), 'engine-'));
  const [program, lines, sound] = ['run', 'lines', 'sound'].map((name) => join(folder, name)) as [
    string,
    string,
    string,
  ];
  writeFileSync(sound, SOUND.bytes);
  writeFileSync(lines, '');
  writeFileSync(
    program,
    `#!/bin/sh\nSOUND=${sound}\nread line || exit 1\necho "$line" >>${lines}\n${does}\n`,
  );
  chmodSync(program, 0o755);
  return { program, lines: () => readFileSync(lines, 'utf8').split('\n').filter(Boolean) };
}

describe('a mouth over an engine', () => {
  test('renders a line once; the same line again comes from the cache', async () => {
    const { program, lines } = engine('cat $SOUND');
    const mouth = mouthOf(program);
    expect(await mouth.render('three  point\nthree', VOICING)).toEqual(SOUND);
    await mouth.render('three  point\nthree', VOICING);
    expect(lines()).toEqual(['three point three']);
    await mouth.render('three  point\nthree', { ...VOICING, rate: 120 });
    expect(lines()).toHaveLength(2);
  });

  test('an engine killed mid-sentence is started anew, and the line is said whole', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'died-'));
    const { program, lines } = engine(
      `if [ -e ${folder}/once ]; then cat $SOUND; else touch ${folder}/once; head -c 1000 $SOUND; kill -9 $$; fi`,
    );
    expect(await mouthOf(program).render('stop', VOICING)).toEqual(SOUND);
    expect(lines()).toEqual(['stop', 'stop']);
  });

  test('an engine that always dies, and one that is not there, are said to be so', async () => {
    const { program, lines } = engine('exit 1');
    await expect(mouthOf(program).render('stop', VOICING)).rejects.toThrow(MouthError);
    expect(lines()).toHaveLength(3);
    await expect(mouthOf('/nowhere/engine').render('stop', VOICING)).rejects.toThrow(/cannot be started/);
  });

  test('an unknown voice is a mistake in the program', async () => {
    await expect(mouthOf('true').render('stop', { voice: 'nobody', rate: 165 })).rejects.toThrow(RangeError);
  });

  test('a program that is not there does not run', async () => {
    expect(programFound('/nowhere/engine')).toBe(false);
    expect(programFound(process.execPath)).toBe(true);
  });
});

describe('espeak-ng', () => {
  test.runIf(hasEngine).each(VOICES)('speaks with $id', async ({ id, language }) => {
    const text = language === 'en' ? 'three point three millilitres' : 'tres punto tres mililitros';
    const wav = await mouthOf('espeak-ng').render(text, { voice: id, rate: 165 });
    expect(wav.durationMs).toBeGreaterThan(700);
    expect(wav.durationMs).toBeLessThan(4000);
    expect(finishWav(wav.bytes)).toEqual(wav);
    const samples = new Int16Array(wav.bytes.slice(44).buffer);
    expect(Math.max(...samples)).toBeGreaterThan(3000);
  });

  test.runIf(hasEngine)('faster is shorter', async () => {
    const mouth = mouthOf('espeak-ng');
    const slow = await mouth.render('lead the next one on', { voice: 'en-us', rate: 120 });
    const fast = await mouth.render('lead the next one on', { voice: 'en-us', rate: 220 });
    expect(fast.durationMs).toBeLessThan(0.75 * slow.durationMs);
  });

  test('a voice of another language gives way to the usual one of this', () => {
    expect(voiceFor('en-gb', 'en').id).toBe('en-gb');
    expect(voiceFor('en-gb', 'es').id).toBe('es-americas');
  });
});

describe('the player without a screen', () => {
  /** A player that does what the shell text says with its input. */
  function player(does: string) {
    const folder = mkdtempSync(join(tmpdir(), 'player-'));
    writeFileSync(join(folder, 'run'), `#!/bin/sh\n${does}\n`.replaceAll('$OUT', join(folder, 'out')));
    chmodSync(join(folder, 'run'), 0o755);
    return { program: join(folder, 'run'), heard: () => readFileSync(join(folder, 'out')) };
  }

  test('hands the sound over whole and tells when it is over', async () => {
    const { program, heard } = player('cat >$OUT');
    expect(await playOnAlsa(SOUND, 'default', program).ended).toBe(true);
    expect(Buffer.compare(heard(), SOUND.bytes)).toBe(0);
    expect(await playOnAlsa(SOUND, 'default', '/nowhere/player').ended).toBe(false);
    expect(await playOnAlsa(SOUND, 'default', 'false').ended).toBe(false);
  });

  test('is cut off at once', async () => {
    const { program } = player('exec sleep 30');
    const from = performance.now();
    const playing = playOnAlsa(SOUND, 'default', program);
    playing.cut();
    expect(await playing.ended).toBe(true);
    expect(performance.now() - from).toBeLessThan(5000);
  });
});
