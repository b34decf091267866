import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { AWAKE_MS } from '../../../core/speech/wake.ts';
import type { RecorderOptions } from '../../../hardware/ear/alsa-recorder.ts';
import { EarView } from '../../../shared/ear.ts';
import { hearingRig, jugInHand, setEar } from '../make/hearing-rig.ts';
import { bringToOffer } from '../make/test-barn.ts';

describe('when it hears', () => {
  test('it opens with the first microphone, and closes when it is turned off', async () => {
    const rig = hearingRig();
    rig.hearing.look();
    expect(rig.opened).toEqual([]);
    expect(rig.hearing.view()).toMatchObject({ listening: 'off', source: null, trouble: null, open: false });
    rig.press();
    expect(rig.hearing.view()).toMatchObject({ listening: 'waiting', source: 'page', open: true });
    const { ear } = rig;
    setEar(rig, { mode: 'off' });
    expect(ear.listening).toBe('off');
    expect(EarView.parse(rig.hearing.view())).toMatchObject({ listening: 'off', open: false, phrases: [] });
    setEar(rig, { mode: 'press' });
    expect(rig.opened).toHaveLength(2);
    await rig.hearing.stop();
  });

  test('pressed to talk it attends only while the key is down', () => {
    const rig = hearingRig();
    rig.press();
    expect(rig.ear.attending).toBe(true);
    rig.hearing.told(rig.page, { type: 'talk', on: false });
    expect(rig.ear.attending).toBe(false);
    expect(rig.hearing.view().open).toBe(false);
  });

  test('a page that is gone has its key up', () => {
    const rig = hearingRig();
    rig.press();
    rig.hearing.gone(rig.page);
    expect(rig.ear).toMatchObject({ attending: false, cuts: 1 });
    expect(rig.hearing.view()).toMatchObject({ source: null, open: false });
  });

  test('listening all day it hears its wake phrase alone, and once woken what may be said, for a while', () => {
    const rig = hearingRig();
    jugInHand(rig);
    setEar(rig, { mode: 'wake' });
    rig.hearing.told(rig.page, { type: 'microphone', rate: 48_000, channels: 2 });
    const kinds = () => new Set(rig.ear.grammars.at(-1)?.phrases.map(({ command }) => command.kind));
    expect(rig.ear.attending).toBe(true);
    expect(kinds()).toEqual(new Set(['wake']));
    expect(rig.hearing.view().open).toBe(false);
    rig.command({ kind: 'wake', also: null });
    expect(rig.hearing.view()).toMatchObject({ open: true, heard: { outcome: 'done' } });
    expect(kinds().has('animal')).toBe(true);
    rig.test.clock.pass(AWAKE_MS - 1);
    rig.command({ kind: 'skip', reason: 'later' });
    rig.test.clock.pass(AWAKE_MS - 1);
    rig.hearing.look();
    expect(rig.hearing.view().open).toBe(true);
    rig.test.clock.pass(2);
    rig.hearing.look();
    expect(rig.hearing.view().open).toBe(false);
    expect(kinds()).toEqual(new Set(['wake']));
  });

  test('the time to answer does not run out while the kiosk itself speaks', () => {
    const rig = hearingRig();
    setEar(rig, { mode: 'wake' });
    rig.hearing.told(rig.page, { type: 'microphone', rate: 16_000, channels: 1 });
    rig.command({ kind: 'wake', also: null });
    rig.voice.until = rig.test.clock.uptimeMs + 20_000;
    rig.hearing.look();
    rig.test.clock.pass(20_000);
    rig.voice.until = null;
    rig.hearing.look();
    expect(rig.hearing.view().open).toBe(true);
    rig.test.clock.pass(AWAKE_MS + 1);
    rig.hearing.look();
    expect(rig.hearing.view().open).toBe(false);
  });

  test('asleep, what it does not understand is none of its business', () => {
    const rig = hearingRig();
    setEar(rig, { mode: 'wake' });
    rig.hearing.told(rig.page, { type: 'microphone', rate: 16_000, channels: 1 });
    rig.ear.hear({ kind: 'rejected', why: 'unsure', words: ['home', 'screen'], fit: null });
    expect(rig.hearing.view().heard).toBeNull();
    rig.command({ kind: 'wake', also: null });
    rig.ear.hear({ kind: 'rejected', why: 'unsure', words: ['home', 'screen'], fit: null });
    expect(rig.hearing.view().heard).toMatchObject({ outcome: 'not-understood', words: 'home screen' });
    expect(rig.said).toEqual([]);
  });

  test('while the kiosk speaks, and when it is about to, it is deaf; and hears again by itself', async () => {
    const rig = hearingRig();
    rig.press();
    rig.voice.until = rig.test.clock.uptimeMs + 900;
    rig.hearing.look();
    expect(rig.ear.speaking).toBe(true);
    rig.voice.until = null;
    rig.test.clock.pass(900);
    await rig.timers.advance(900);
    expect(rig.ear.speaking).toBe(false);
  });
});

describe('its phrases', () => {
  test('are told when the round moves on, and never for a weight that moves', () => {
    const rig = hearingRig();
    rig.press();
    const before = rig.ear.grammars.length;
    jugInHand(rig);
    expect(rig.ear.grammars).toHaveLength(before + 1);
    for (let i = 0; i < 60; i += 1) {
      rig.test.weigh(i < 20 ? 0 : 7000 + 900 * (i % 3), 100);
      rig.hearing.look();
    }
    expect(rig.test.barn.context.memory.round.phase.step).toBe('visit');
    expect(rig.ear.grammars).toHaveLength(before + 1);
    bringToOffer(rig.test);
    rig.hearing.look();
    expect(rig.ear.grammars.at(-1)?.given).toEqual({ decimals: 1 });
    expect(rig.hearing.view().phrases[0]?.group).toBe('given');
  });

  test('an animal that was enrolled can be called at once', () => {
    const rig = hearingRig();
    rig.press();
    jugInHand(rig);
    const enrol = { species: 'goat', class: 'female', tag: null, inMilk: false } as const;
    rig.test.send({ type: 'enrol', name: 'Yarrow', ...enrol });
    rig.hearing.look();
    const said = rig.ear.grammars.at(-1)?.phrases.map(({ words }) => words.join(' '));
    expect(said).toContain('animal yarrow');
  });
});

describe('what it tells', () => {
  test('without an engine, with a microphone that is blocked or missing', () => {
    const none = hearingRig({ engine: false });
    none.press();
    expect(none.hearing.view()).toMatchObject({ trouble: 'no-engine', listening: 'off' });
    const rig = hearingRig();
    rig.hearing.told(rig.page, { type: 'microphone', rate: null, why: 'blocked' });
    expect(rig.hearing.view().trouble).toBe('blocked');
    rig.hearing.told(rig.page, { type: 'microphone', rate: null, why: 'none' });
    expect(rig.hearing.view().trouble).toBe('no-microphone');
  });

  test('an engine that does not come up, as soon as that is sure', () => {
    const rig = hearingRig();
    rig.press();
    rig.ear.become('starting');
    expect(rig.hearing.view()).toMatchObject({ listening: 'starting', trouble: null, open: false });
    rig.test.clock.pass(60_001);
    expect(rig.hearing.view().trouble).toBe('engine-failing');
    rig.ear.become('waiting');
    expect(rig.hearing.view().trouble).toBeNull();
  });

  test('what was recorded, only when that is wished, until it is wiped', () => {
    const folder = mkdtempSync(join(tmpdir(), 'byreside-'));
    const rig = hearingRig({ folder });
    rig.press();
    rig.command({ kind: 'screen', screen: 'home' });
    expect(rig.hearing.view().recordedBytes).toBe(0);
    setEar(rig, { recording: true });
    rig.command({ kind: 'screen', screen: 'home' });
    expect(rig.hearing.view()).toMatchObject({ recording: true, recordedBytes: 44 + 3200 });
    rmSync(folder, { recursive: true });
  });
});

test('the board’s own microphone is used while no page has one', () => {
  const started: Pick<RecorderOptions, 'onSound' | 'onRunning'>[] = [];
  let stops = 0;
  const rig = hearingRig({
    openRecorder: (tells) => {
      started.push(tells);
      return {
        stop() {
          stops += 1;
        },
      };
    },
  });
  rig.hearing.look();
  started[0]?.onRunning(true);
  rig.hearing.look();
  expect(rig.hearing.view()).toMatchObject({ source: 'board', listening: 'waiting' });
  started[0]?.onSound(new Int16Array(800));
  expect(rig.ear.fed).toEqual([{ samples: 800, format: { rate: 16_000, channels: 1 } }]);
  rig.press();
  expect([rig.hearing.view().source, stops]).toEqual(['page', 1]);
  rig.hearing.gone(rig.page);
  expect(started).toHaveLength(2);
});
