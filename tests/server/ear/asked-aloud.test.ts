import { describe, expect, test } from 'vitest';
import { type HearingRig, hearingRig, jugInHand } from '../make/hearing-rig.ts';
import { bringToOffer, GOAT, standingOffer } from '../make/test-barn.ts';

const treatments = (rig: HearingRig) => rig.test.store.dayBook.newest(10);

describe('what is asked aloud', () => {
  test('an animal that was called is taken, said aloud with its number, and shown', () => {
    const rig = hearingRig();
    rig.press();
    jugInHand(rig);
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
    jugInHand(rig);
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
