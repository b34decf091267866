import { afterEach, describe, expect, test } from 'vitest';
import { type MountedApp, mountApp } from './mount-app.ts';
import { DOSE_CARD_SCENES } from './preview/dose-card-scenes.ts';

let app: MountedApp;

function open(name: string): void {
  const scene = DOSE_CARD_SCENES.find((each) => each.name === name);
  if (scene === undefined) throw new Error(`no scene ${name}`);
  app = mountApp(scene.state, 'platform');
}

afterEach(() => app.close());

describe('the card that says why', () => {
  test.each([
    ['card-kid', ['syringe', '1 mL syringe', 'Mix double, draw double: 1.9 mL']],
    ['card-kid-13', ['syringe', 'Nothing else would make it much surer']],
    ['card-buck', ['syringe', 'A 35 mL syringe needs fewer draws']],
    ['card-coarse', ['weight', 'A finer scale or a calmer stand']],
  ])('%s is one tap from the dose and advises what fits the animal', (name, says) => {
    open(name);
    app.click('why');
    for (const each of says) expect(app.text('card-advice')).toContain(each);
    expect(app.find('give')).toBeNull();
  });

  test.each([
    ['weight', 'Held on the platform'],
    ['rate', 'Goat anthelmintic chart, July 2006'],
    ['limits', 'Set by this project as a guard'],
    ['strength', '21 CFR 520.1242a(a)'],
    ['volume', 'ISO 7886-1'],
  ])('%s is traced to its source by a second tap', (figure, source) => {
    open('card-kid');
    app.click('why');
    app.click(`card-${figure}`);
    expect(app.text('figure-source')).toContain(source);
    app.click('source-back');
    app.click('card-back');
    expect(app.find('give')).not.toBeNull();
  });

  test.each([
    // 4 kg at 12 mg/kg of 49.45 mg/mL is 0.971 mL, 13 kg 3.155 mL, 90 kg 21.84 mL; no 1 mL syringe is on hand.
    ['card-kid', '1 mL', '3 mL syringe'],
    ['card-kid-13', '3.2 mL', '6 mL syringe'],
    ['card-buck', '21.8 mL', '12 mL syringe'],
  ])(
    '%s: its dose, its budget, its own advice, and each figure traced in two taps',
    (name, volume, syringe) => {
      open(name);
      expect(app.text('dose-volume')).toBe(volume);
      expect(app.text('dose-syringe')).toContain(syringe);
      expect(app.text('dose-interval')).toMatch(/mg\/kg \([\d.]+ to [\d.]+\)/);
      for (const figure of ['weight', 'rate', 'limits', 'strength', 'volume']) {
        app.click('why');
        expect(app.text('card-interval')).not.toBe('');
        expect(app.text('card-advice')).not.toBe('');
        app.click(`card-${figure}`);
        // A source has a date or an edition, or says whose it is.
        expect(app.text('figure-source')).toMatch(/(19|20)\d\d|ISO|this project|platform/);
        app.click('source-back');
        app.click('card-back');
      }
    },
  );

  test('the advice changes with the animal', () => {
    open('card-kid');
    const said = ['card-kid', 'card-kid-13', 'card-buck'].map((name) => {
      const scene = DOSE_CARD_SCENES.find((each) => each.name === name);
      if (scene === undefined) throw new Error(`no scene ${name}`);
      app.patch({ offer: scene.state.offer, card: scene.state.card, round: scene.state.round });
      app.click('why');
      return app.text('card-advice');
    });
    expect(new Set(said).size).toBe(3);
  });

  test('shows the sum the volume comes from, on the numbers shown', () => {
    open('card-kid');
    app.click('why');
    app.click('card-volume');
    expect(app.text('figure-source')).toContain('12 mg/kg × 4 kg ÷ 49.45 mg/mL = 0.971 mL');
  });

  test('closes when the dose is no longer on offer', () => {
    open('card-kid');
    app.click('why');
    app.patch({ offer: null, card: null, round: { step: 'no-jug', unanswered: [] } });
    expect(app.find('dose-card')).toBeNull();
  });

  test('does not open with the card of another dose', () => {
    open('card-kid');
    const other = DOSE_CARD_SCENES.find(({ name }) => name === 'card-buck')?.state.card ?? null;
    app.patch({ card: other });
    app.click('why');
    expect(app.find('dose-card')).toBeNull();
    expect(app.find('give')).not.toBeNull();
  });
});
