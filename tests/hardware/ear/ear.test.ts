import { afterEach, describe, expect, test } from 'vitest';
import { ALWAYS, SCORES } from '../../../core/speech/fixed-phrases.ts';
import type { MayBeHeard } from '../../../core/speech/may-be-heard.ts';
import { joined } from '../../../hardware/ear/gate.ts';
import { EAR_RATE } from '../../../hardware/ear/pcm.ts';
import { seededRandom } from '../../../hardware/simulator/random.ts';
import { mixAt } from '../../bench/voice/mix.ts';
import { speak } from '../../bench/voice/speakers.ts';
import { type EarRig, earPresent, startEarRig } from './ear-rig.ts';

const MAY: MayBeHeard = { phrases: [...ALWAYS, ...SCORES], given: { decimals: 1 }, leftOut: [] };
const VOICE = { name: 'test', program: 'flite', args: ['-voice', 'kal16'], set: 'tune' } as const;
/** Starting the engine takes a while where everything else is tested beside it. */
const PATIENCE = 150_000;

function sound(text: string): Int16Array {
  const quiet = { before: EAR_RATE / 2, after: EAR_RATE };
  return mixAt(speak(VOICE, text), { noise: 'pink', snrDb: 25, room: false }, quiet, 1).samples;
}

let rig: EarRig;
afterEach(() => rig.ear.stop());

if (!earPresent)
  console.warn('The ear is not tested: libpocketsphinx-dev, pocketsphinx-en-us or flite is missing.');

describe.skipIf(!earPresent)('the ear on the real engine', { timeout: PATIENCE }, () => {
  test('hears commands, rejects talk, and holds the state to its words', async () => {
    rig = await startEarRig(MAY);
    await rig.play(sound('home screen'));
    await rig.play(sound('given three point three mils'));
    await rig.play(sound('where did you put the bucket'));
    const [home, given, talk] = rig.heard;
    expect(home).toMatchObject({ kind: 'command', command: { kind: 'screen', screen: 'home' } });
    expect(given).toMatchObject({ kind: 'command', command: { kind: 'given', volumeMl: 3.3 } });
    expect(talk?.kind).toBe('rejected');
    expect(rig.heard.slice(2).every(({ kind }) => kind === 'rejected')).toBe(true);
    expect(rig.seen.slice(0, 4)).toEqual(['starting', 'waiting', 'hearing', 'waiting']);
  });

  test('fits a command as well after a dose that was heard twice as before it', async () => {
    rig = await startEarRig(MAY);
    for (const text of ['home screen', 'given three point three mils', 'home screen', 'board screen'])
      await rig.play(sound(text));
    expect(rig.heard.map(({ kind }) => kind)).toEqual(['command', 'command', 'command', 'command']);
    const [before, dose, after] = rig.heard;
    expect(dose?.fit?.overOthers).toBeGreaterThan(0);
    expect(Math.abs((after?.fit?.overPhones ?? 0) - (before?.fit?.overPhones ?? 0))).toBeLessThan(10);
  });

  test('hears only what may be heard now', async () => {
    rig = await startEarRig(MAY);
    rig.ear.setGrammar({ phrases: ALWAYS, given: null, leftOut: [] });
    await rig.play(sound('given three point three mils'));
    await rig.play(sound('home screen'));
    // What is no phrase may be cut in two.
    expect(rig.heard[0]?.kind).toBe('rejected');
    expect(rig.heard.filter(({ kind }) => kind === 'command')).toMatchObject([
      { command: { kind: 'screen' } },
    ]);
  });

  test('a grammar that comes while it hears counts for the next', async () => {
    rig = await startEarRig(MAY);
    const said = sound('eyelid score three');
    await rig.play(said.subarray(0, EAR_RATE));
    expect(rig.ear.listening).toBe('hearing');
    rig.ear.setGrammar({ phrases: ALWAYS, given: null, leftOut: [] });
    await rig.play(said.subarray(EAR_RATE));
    expect(rig.heard).toMatchObject([{ kind: 'command', command: { kind: 'score' } }]);
  });

  test('killed in the middle of a sentence it comes back and hears the next', async () => {
    rig = await startEarRig(MAY);
    const said = sound('home screen');
    await rig.play(said.subarray(0, EAR_RATE));
    const { pid } = rig.ear;
    if (pid === undefined) throw new Error('no process');
    process.kill(pid, 'SIGKILL');
    await rig.until('starting');
    await rig.play(said.subarray(EAR_RATE));
    expect(rig.heard).toEqual([]);
    await rig.until('waiting');
    expect(rig.ear.pid).not.toBe(pid);
    await rig.play(said);
    expect(rig.heard).toMatchObject([{ kind: 'command', command: { kind: 'screen', screen: 'home' } }]);
  });

  test('stopped for a moment it is not believed to be alive', async () => {
    rig = await startEarRig(MAY);
    const { pid } = rig.ear;
    if (pid === undefined) throw new Error('no process');
    process.kill(pid, 'SIGSTOP');
    const playing = rig.play(sound('home screen'));
    await rig.until('starting');
    await playing;
    await rig.until('waiting');
    expect(rig.ear.pid).not.toBe(pid);
  });

  test('noise, silence, full-scale squares and torn pieces are no command', async () => {
    rig = await startEarRig(MAY);
    const random = seededRandom(3);
    const noise = Int16Array.from({ length: 3 * EAR_RATE }, () => Math.round(65_535 * random() - 32_768));
    const square = Int16Array.from({ length: EAR_RATE }, (_, i) => (i % 80 < 40 ? 32_767 : -32_768));
    const silence = new Int16Array(EAR_RATE);
    await rig.play(joined([silence, noise, silence, square, silence, noise.subarray(0, 7001), silence]));
    rig.ear.feed(new Int16Array(0), { rate: EAR_RATE, channels: 1 });
    rig.ear.feed(noise.subarray(0, 1), { rate: 44_100, channels: 2 });
    await rig.ear.settled();
    expect(rig.heard.filter(({ kind }) => kind === 'command')).toEqual([]);
    expect(() => rig.ear.feed(noise, { rate: 5, channels: 1 })).toThrow(RangeError);
    await rig.play(sound('home screen'));
    expect(rig.heard.at(-1)?.kind).toBe('command');
  });

  test('hears 48 kHz stereo as a browser may send it', async () => {
    rig = await startEarRig(MAY);
    const mono = sound('home screen');
    const stereo = Int16Array.from({ length: 6 * mono.length }, (_, i) => mono[Math.floor(i / 6)] ?? 0);
    for (let at = 0; at < stereo.length; at += 4801) {
      rig.ear.feed(stereo.subarray(at, at + 4801), { rate: 48_000, channels: 2 });
      await rig.ear.settled();
    }
    expect(rig.heard).toMatchObject([{ kind: 'command', command: { kind: 'screen', screen: 'home' } }]);
  });

  test('does not hear the kiosk, whatever it says, nor what it cut off', async () => {
    rig = await startEarRig(MAY);
    const prompt = sound('given three point three mils');
    await rig.play(prompt);
    expect(rig.heard.map(({ kind }) => kind)).toEqual(['command']);
    rig.ear.kioskSpeaking(true);
    expect(rig.ear.listening).toBe('kiosk-speaking');
    await rig.play(prompt);
    rig.ear.kioskSpeaking(false);
    await rig.play(prompt.subarray(0, EAR_RATE / 4));
    expect(rig.heard).toHaveLength(1);
    await rig.until('waiting');
    await rig.play(prompt.subarray(0, 1.2 * EAR_RATE));
    expect(rig.ear.listening).toBe('hearing');
    rig.ear.kioskSpeaking(true);
    await rig.play(prompt.subarray(1.2 * EAR_RATE));
    expect(rig.heard.slice(1)).toEqual([{ kind: 'rejected', why: 'kiosk-speaking', words: [], fit: null }]);
  });

  test('once stopped it tells nothing more and leaves no process', async () => {
    rig = await startEarRig(MAY);
    const { pid } = rig.ear;
    if (pid === undefined) throw new Error('no process');
    const playing = rig.play(sound('home screen'));
    await rig.ear.stop();
    await playing;
    expect(rig.heard).toEqual([]);
    expect(rig.ear.listening).toBe('off');
    expect(() => process.kill(pid, 0)).toThrow('ESRCH');
  });
});
