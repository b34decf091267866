import { describe, expect, test } from 'vitest';
import { hearingRig } from '../make/hearing-rig.ts';

describe('sound', () => {
  const frame = (samples: number) => new Uint8Array(2 * samples);

  test('of the page that is listened to goes to the ear as it was told to be', () => {
    const rig = hearingRig();
    rig.hearing.told(rig.page, { type: 'microphone', rate: 48_000, channels: 2 });
    rig.hearing.sound(rig.page, frame(960));
    expect(rig.ear.fed).toEqual([{ samples: 960, format: { rate: 48_000, channels: 2 } }]);
  });

  test('of another page, of one far away, and before any format was told is not heard', () => {
    const rig = hearingRig();
    rig.hearing.sound(rig.page, frame(160));
    const far = { own: false, send: () => {} };
    rig.hearing.told(far, { type: 'microphone', rate: 16_000, channels: 1 });
    rig.hearing.told(far, { type: 'talk', on: true });
    rig.hearing.sound(far, frame(160));
    expect(rig.opened).toEqual([]);
    expect(rig.hearing.view()).toMatchObject({ trouble: 'page-far', source: null, open: false });
    const other = { own: true, send: () => {} };
    rig.hearing.told(rig.page, { type: 'microphone', rate: 16_000, channels: 1 });
    rig.hearing.told(other, { type: 'microphone', rate: 16_000, channels: 1 });
    rig.hearing.sound(rig.page, frame(160));
    expect(rig.ear.fed).toEqual([]);
    rig.hearing.sound(other, frame(160));
    expect(rig.ear.fed).toHaveLength(1);
  });

  test.each([
    ['torn in a sample', new Uint8Array(7)],
    ['empty', new Uint8Array(0)],
    ['too long', new Uint8Array(8194)],
  ])('%s is not taken, drops the sentence it breaks, and is told of for a while', (_, bad) => {
    const rig = hearingRig();
    rig.press();
    rig.hearing.sound(rig.page, bad);
    rig.hearing.sound(rig.page, bad);
    expect(rig.ear).toMatchObject({ fed: [], cuts: 2 });
    expect(rig.logged).toHaveLength(1);
    expect(rig.hearing.view().trouble).toBe('bad-sound');
    rig.test.clock.pass(5001);
    expect(rig.hearing.view().trouble).toBeNull();
  });

  test('faster than time passes is taken for a few seconds and then no more', () => {
    const rig = hearingRig();
    rig.press();
    for (let i = 0; i < 1000; i += 1) rig.hearing.sound(rig.page, frame(1600));
    expect(rig.ear.fed.length).toBe(40);
    rig.test.clock.pass(1000);
    for (let i = 0; i < 1000; i += 1) rig.hearing.sound(rig.page, frame(1600));
    expect(rig.ear.fed.length).toBe(51);
  });

  test('that ends with the key is followed by silence, so that the sentence is judged', async () => {
    const rig = hearingRig();
    rig.press();
    rig.hearing.sound(rig.page, frame(160));
    rig.ear.become('hearing');
    rig.hearing.told(rig.page, { type: 'talk', on: false });
    rig.hearing.told(rig.page, { type: 'microphone', rate: null, why: 'closed' });
    rig.test.clock.pass(300);
    await rig.timers.advance(300);
    expect(rig.ear.fed.map(({ samples }) => samples)).toEqual([160, 16_000]);
    expect(rig.ear.cuts).toBe(0);
  });

  test('that stalls while the key is down drops its sentence', () => {
    const rig = hearingRig();
    rig.press();
    rig.hearing.sound(rig.page, frame(160));
    rig.ear.become('hearing');
    rig.test.clock.pass(4900);
    rig.hearing.look();
    expect(rig.ear.cuts).toBe(0);
    rig.test.clock.pass(200);
    rig.hearing.look();
    expect(rig.ear.cuts).toBe(1);
  });
});
