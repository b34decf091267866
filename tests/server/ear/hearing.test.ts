import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { AWAKE_MS } from '../../../core/speech/wake.ts';
import type { RecorderOptions } from '../../../hardware/ear/alsa-recorder.ts';
import { type EarSettings, EarView } from '../../../shared/ear.ts';
import { type HearingRig, hearingRig } from '../make/hearing-rig.ts';
import { bringToOffer, GOAT, standingOffer } from '../make/test-barn.ts';

function set(rig: HearingRig, ear: Partial<EarSettings>): void {
  rig.test.send({ type: 'set-ear', ear: { mode: 'press', key: null, recording: false, ...ear } });
  rig.hearing.look();
}

/** A jug proved in hand, and nobody on the platform. */
function atVisit(rig: HearingRig): void {
  rig.test.send({ type: 'take-jug', jugId: 'jug-1' });
  rig.test.send({ type: 'prove-jug', jugId: 'jug-1', deliberate: false });
  rig.hearing.look();
}

const treatments = (rig: HearingRig) => rig.test.store.dayBook.newest(10);

describe('when it hears', () => {
  test('it opens with the first microphone, and closes when it is turned off', async () => {
    const rig = hearingRig();
    rig.hearing.look();
    expect(rig.opened).toEqual([]);
    expect(rig.hearing.view()).toMatchObject({ listening: 'off', source: null, trouble: null, open: false });
    rig.press();
    expect(rig.hearing.view()).toMatchObject({ listening: 'waiting', source: 'page', open: true });
    const { ear } = rig;
    set(rig, { mode: 'off' });
    expect(ear.listening).toBe('off');
    expect(EarView.parse(rig.hearing.view())).toMatchObject({ listening: 'off', open: false, phrases: [] });
    set(rig, { mode: 'press' });
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
    atVisit(rig);
    set(rig, { mode: 'wake' });
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
    set(rig, { mode: 'wake' });
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
    set(rig, { mode: 'wake' });
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
    atVisit(rig);
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
    atVisit(rig);
    const enrol = { species: 'goat', class: 'female', tag: null, inMilk: false } as const;
    rig.test.send({ type: 'enrol', name: 'Yarrow', ...enrol });
    rig.hearing.look();
    const said = rig.ear.grammars.at(-1)?.phrases.map(({ words }) => words.join(' '));
    expect(said).toContain('animal yarrow');
  });
});

describe('what is asked aloud', () => {
  test('an animal that was called is taken, said aloud with its number, and shown', () => {
    const rig = hearingRig();
    rig.press();
    atVisit(rig);
    rig.command({ kind: 'animal', animalId: GOAT.id }, 'tag oh seven seven seven');
    expect(rig.test.barn.context.memory.round.phase).toMatchObject({
      step: 'visit',
      visit: { who: { animalId: GOAT.id, via: 'voice' } },
    });
    expect(rig.said).toEqual([{ what: 'called', name: 'Teasel', number: '0777' }]);
    expect(rig.hearing.view().heard).toEqual({
      number: 1,
      words: 'tag oh seven seven seven',
      outcome: 'done',
      sentence: 'Teasel · 0777',
    });
  });

  test('no animal can be called while the kiosk could not say whom it took', () => {
    const rig = hearingRig();
    rig.voice.audible = false;
    rig.press();
    atVisit(rig);
    expect(rig.ear.grammars.at(-1)?.phrases.some(({ command }) => command.kind === 'animal')).toBe(false);
    rig.command({ kind: 'animal', animalId: GOAT.id });
    expect(rig.hearing.view().heard).toMatchObject({ outcome: 'refused' });
    expect(rig.test.barn.context.memory.round.phase).toMatchObject({ visit: { who: null } });
  });

  test('a dose read back right is logged once, and the record says how', () => {
    const rig = hearingRig();
    rig.press();
    bringToOffer(rig.test);
    const given = { kind: 'given', volumeMl: standingOffer(rig.test).dose.plan.total.value } as const;
    rig.command(given);
    expect(treatments(rig).map(({ treatment }) => treatment)).toMatchObject([
      { readBack: true, outcome: 'whole', offer: { animal: { id: GOAT.id } } },
    ]);
    rig.command(given);
    expect(treatments(rig)).toHaveLength(1);
    expect(rig.hearing.view().heard).toMatchObject({ number: 2, outcome: 'refused' });
    expect(rig.said.at(-1)).toEqual({ what: 'not-done', why: 'nothing-offered' });
  });

  test('a dose given by touch does not say so', () => {
    const rig = hearingRig();
    const offerId = bringToOffer(rig.test);
    rig.test.send({ type: 'give', offerId, outcome: 'whole' });
    expect(treatments(rig)).toMatchObject([{ treatment: { readBack: false } }]);
  });

  test('a dose read back wrong is refused aloud and on screen, with both volumes, and nothing is logged', () => {
    const rig = hearingRig();
    rig.press();
    bringToOffer(rig.test);
    const shown = standingOffer(rig.test).dose.plan.total.value;
    rig.command({ kind: 'given', volumeMl: 10 * shown });
    expect(treatments(rig)).toEqual([]);
    expect(rig.said).toEqual([
      { what: 'wrong-number', heard: `${Number((10 * shown).toFixed(3))} mL`, wanted: `${shown} mL` },
    ]);
    expect(rig.hearing.view().heard).toMatchObject({ outcome: 'refused' });
    expect(standingOffer(rig.test)).toBeDefined();
  });

  test('where voice may not give, no read-back is heard, and one that is heard all the same logs nothing', () => {
    const rig = hearingRig({ mayGive: false });
    rig.press();
    bringToOffer(rig.test);
    rig.hearing.look();
    expect(rig.ear.grammars.at(-1)?.given).toBeNull();
    rig.command({ kind: 'given', volumeMl: standingOffer(rig.test).dose.plan.total.value });
    expect(treatments(rig)).toEqual([]);
    expect(rig.said).toEqual([{ what: 'not-done', why: 'not-by-voice' }]);
  });

  test('what needs a held press is refused, aloud too', () => {
    const rig = hearingRig();
    rig.press();
    rig.test.links.bench = 'silent';
    rig.command({ kind: 'take-jug', jugId: 'jug-1' });
    rig.command({ kind: 'jug-on-bench' });
    expect(rig.hearing.view().heard).toMatchObject({ outcome: 'refused' });
    expect(rig.test.barn.context.memory.round.phase.step).toBe('prove-jug');
  });

  test('undo opens the question on the page; that nothing was given may then be said, for a while', () => {
    const rig = hearingRig();
    rig.press();
    const offerId = bringToOffer(rig.test);
    rig.test.send({ type: 'give', offerId, outcome: 'whole' });
    rig.command({ kind: 'not-given' });
    expect(rig.hearing.view().heard).toMatchObject({ outcome: 'refused' });
    rig.command({ kind: 'undo' });
    const [{ treatment } = { treatment: null }] = treatments(rig);
    expect(rig.sent).toEqual([{ type: 'spoken-wish', wish: { type: 'undo', treatmentId: treatment?.id } }]);
    expect(rig.ear.grammars.at(-1)?.phrases.some(({ command }) => command.kind === 'not-given')).toBe(true);
    rig.command({ kind: 'not-given' });
    expect(treatments(rig)).toMatchObject([{ corrections: [{ what: { kind: 'not-given' } }] }]);
  });

  test('a screen is the page’s to go to; without a page it is refused', () => {
    const rig = hearingRig();
    rig.press();
    rig.command({ kind: 'screen', screen: 'day-book' });
    expect(rig.sent).toEqual([{ type: 'spoken-wish', wish: { type: 'screen', screen: 'day-book' } }]);
    rig.hearing.told(rig.page, { type: 'microphone', rate: null, why: 'closed' });
    rig.command({ kind: 'screen', screen: 'home' });
    expect(rig.sent).toHaveLength(2);
    rig.hearing.gone(rig.page);
    rig.command({ kind: 'screen', screen: 'home' });
    expect(rig.sent).toHaveLength(2);
    expect(rig.hearing.view().heard).toMatchObject({ outcome: 'refused' });
  });

  test('scores, skip and next are done as by a tap', () => {
    const rig = hearingRig();
    rig.press();
    const offerId = bringToOffer(rig.test);
    rig.command({ kind: 'score', score: { sign: 'eyelid', step: 4 } });
    expect(rig.test.store.scores.newest(GOAT.id, 5)).toMatchObject([{ eyelid: 4 }]);
    rig.test.send({ type: 'give', offerId: standingOffer(rig.test).id, outcome: 'whole' });
    expect(offerId).toBeTruthy();
    rig.command({ kind: 'next' });
    expect(rig.test.barn.context.memory.round.phase.step).toBe('visit');
    rig.command({ kind: 'skip', reason: 'sick' });
    expect(rig.hearing.view().heard).toMatchObject({ number: 3, outcome: 'done' });
  });

  test('asked to say again it does; where nothing holds any more it says so', () => {
    const rig = hearingRig();
    rig.press();
    rig.command({ kind: 'say-again' });
    expect(rig.hearing.view().heard).toMatchObject({ outcome: 'done' });
    rig.voice.lastSaid = false;
    rig.command({ kind: 'say-again' });
    expect(rig.said).toEqual([{ what: 'not-done', why: 'nothing-said' }]);
  });

  test('what was meant for it and not understood is told aloud; a cough is not', () => {
    const rig = hearingRig();
    rig.press();
    rig.ear.hear({ kind: 'rejected', why: 'no-phrase', words: [], fit: null });
    rig.ear.hear({ kind: 'rejected', why: 'too-short', words: ['home'], fit: null });
    expect(rig.hearing.view().heard).toBeNull();
    rig.ear.hear({ kind: 'rejected', why: 'unsure', words: ['home', 'screen'], fit: null });
    expect(rig.said).toEqual([{ what: 'not-understood' }]);
    rig.ear.hear({ kind: 'rejected', why: 'kiosk-speaking', words: [], fit: null });
    expect(rig.said).toHaveLength(1);
    expect(rig.hearing.view().heard?.sentence).toContain('speaking');
  });
});

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
    set(rig, { recording: true });
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
