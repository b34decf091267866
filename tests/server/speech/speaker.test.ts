import { describe, expect, test } from 'vitest';
import { bringToOffer, standingOffer } from '../make/test-barn.ts';
import { speaking } from './speaking.ts';

const DOSE = /^three point seven millilitres, six mil syringe$/;

describe('a round heard', () => {
  test('the dose first, then the weight; both as the screen shows them', async () => {
    const rig = speaking();
    bringToOffer(rig.test);
    await rig.look();
    expect(rig.said).toHaveLength(1);
    expect(rig.said[0]).toMatch(DOSE);
    expect(standingOffer(rig.test).dose.plan.total.value).toBe(3.7);
    await rig.end();
    expect(rig.said[1]).toBe('Teasel');
    await rig.end();
    expect(rig.said[2]).toBe('fifteen point four kilograms, one five point four');
    expect(rig.sounds).toContain('held');
  });

  test('what was begun is cut off when its dose is logged, and the log is said', async () => {
    const rig = speaking();
    const offerId = bringToOffer(rig.test);
    await rig.look();
    rig.test.send({ type: 'give', offerId, outcome: 'whole' });
    await rig.look();
    expect(rig.said.slice(1)).toEqual(['(hush)', 'Logged, Teasel.']);
    expect(rig.sounds.at(-1)).toBe('logged');
    await rig.end();
    expect(rig.said.at(-1)).toMatch(/^Meat /);
  });

  test('a lost platform cuts off the dose, which is said again', async () => {
    const rig = speaking();
    bringToOffer(rig.test);
    await rig.look();
    rig.test.links.platform = 'lost';
    await rig.look();
    expect(rig.said.slice(1)).toEqual(['(hush)', 'Platform lost. Check the cable.']);
    await rig.end();
    expect(rig.said.at(-1)).toMatch(DOSE);
  });

  test('a refusal is said, a skip too, and nothing of one that was not asked aloud', async () => {
    const rig = speaking();
    const { send } = rig.test;
    const give = { type: 'give', id: 'x', offerId: 'no-such', outcome: 'whole' } as const;
    rig.speaker.answered(give, send(give));
    await rig.settle();
    expect(rig.said).toEqual(['This dose has ended. Weigh again.']);
    const face = { type: 'set-face', id: 'y', face: 'dim' } as const;
    rig.speaker.answered(face, send(face));
    const skip = { type: 'skip', id: 'z', reason: 'later' } as const;
    rig.speaker.answered(skip, { ok: true, id: 'z', repeated: false });
    await rig.end();
    expect(rig.said.slice(1)).toEqual(['Skipped.']);
  });
});

describe('the engine', () => {
  test('that fails at a sentence is told of once, and the next sentence is said', async () => {
    const rig = speaking();
    rig.engine.broken = true;
    rig.speaker.say({ what: 'try-out' });
    await rig.settle();
    expect(rig.said).toEqual([]);
    expect(rig.failures).toEqual(['a sentence could not be spoken']);
    rig.engine.broken = false;
    rig.speaker.say({ what: 'who' });
    await rig.settle();
    expect(rig.said).toEqual(['Who is it?']);
  });

  test('of another language is asked for its words', async () => {
    const rig = speaking();
    const voice = { language: 'es', voice: 'es-spain', rate: 155, volume: 80, muted: false } as const;
    rig.test.send({ type: 'set-voice', voice });
    rig.speaker.say({ what: 'who' });
    await rig.settle();
    expect(rig.said).toEqual(['¿Quién es?']);
    expect(rig.speaker.view()).toMatchObject({
      language: 'es',
      speaking: { what: 'who', text: '¿Quién es?' },
    });
  });
});

describe('silence', () => {
  test.each(['locked', 'no-page', 'no-voice'] as const)(
    'while %s, words are not kept for later',
    async (why) => {
      const rig = speaking();
      rig.heard.now = why;
      bringToOffer(rig.test);
      await rig.look();
      rig.heard.now = 'heard';
      await rig.look();
      expect(rig.said).toEqual([]);
      expect(rig.engine.rendered).toEqual([]);
    },
  );

  test('muted mid-word it stops, and sounds no earcon', async () => {
    const rig = speaking();
    rig.speaker.say({ what: 'try-out' });
    await rig.settle();
    const { voice } = rig.test.barn.context.memory.settings;
    const mute = { type: 'set-voice', id: 'm', voice: { ...voice, muted: true } } as const;
    rig.speaker.answered(mute, rig.test.send(mute));
    bringToOffer(rig.test);
    await rig.look();
    expect(rig.said.slice(1)).toEqual(['(hush)']);
    expect(rig.sounds).toEqual([]);
  });
});

describe('the ear is told how long the kiosk sounds', () => {
  test('from the first word until a moment after the last', async () => {
    const rig = speaking();
    expect(rig.speaker.soundingUntil()).toBeNull();
    rig.speaker.say({ what: 'who' });
    await rig.settle();
    const began = rig.test.clock.uptimeMs;
    expect(rig.speaker.soundingUntil()).toBeGreaterThanOrEqual(began + 1000);
    await rig.pass(1000);
    await rig.end();
    expect(rig.speaker.soundingUntil()).toBeGreaterThan(rig.test.clock.uptimeMs);
    await rig.pass(400);
    expect(rig.speaker.soundingUntil()).toBeNull();
  });

  test('for an earcon too', () => {
    const rig = speaking();
    rig.speaker.tryVoice('fault');
    expect(rig.speaker.soundingUntil()).toBeGreaterThan(rig.test.clock.uptimeMs + 500);
  });

  test('a page that never tells the end does not silence the kiosk for good', async () => {
    const rig = speaking();
    rig.speaker.say({ what: 'who' });
    rig.speaker.say({ what: 'skipped' });
    await rig.settle();
    await rig.pass(2600);
    expect(rig.said).toEqual(['Who is it?', 'Skipped.']);
  });
});

test('the sound of what is said can be fetched, and of nothing else', async () => {
  const rig = speaking();
  rig.speaker.say({ what: 'who' });
  await rig.settle();
  const id = rig.speaker.view().speaking?.id ?? -1;
  expect(rig.speaker.wav(id)?.durationMs).toBe(1000);
  expect(rig.speaker.wav(id + 1)).toBeNull();
});

describe('what the ear asks of it', () => {
  test('the last important thing is said again, a weight and an animal in between are not', async () => {
    const rig = speaking();
    expect(rig.speaker.sayAgain()).toBe(false);
    bringToOffer(rig.test);
    await rig.look();
    for (let i = 0; i < 8; i += 1) await rig.end();
    const before = rig.said.length;
    expect(rig.speaker.sayAgain()).toBe(true);
    await rig.settle();
    expect(rig.said.slice(before)).toEqual([expect.stringMatching(DOSE)]);
  });

  test('a dose that is over is not said again, nor is anything while nobody could hear it', async () => {
    const rig = speaking();
    bringToOffer(rig.test);
    await rig.look();
    rig.heard.now = 'locked';
    expect([rig.speaker.audible(), rig.speaker.sayAgain()]).toEqual([false, false]);
    rig.heard.now = 'heard';
    rig.test.send({ type: 'skip', reason: 'later' });
    await rig.look();
    expect(rig.speaker.sayAgain()).toBe(false);
  });

  test('it sounds from the moment something is to be said, before the first of it is rendered', () => {
    const rig = speaking();
    expect(rig.speaker.soundingUntil()).toBeNull();
    rig.speaker.say({ what: 'called', name: 'Teasel', number: '417' });
    expect(rig.said).toEqual([]);
    expect(rig.speaker.soundingUntil()).toBeGreaterThan(rig.test.clock.uptimeMs);
  });
});
