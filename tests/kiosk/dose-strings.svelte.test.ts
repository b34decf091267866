import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CAUTION_CODES } from '../../core/dosing/cautions.ts';
import { recordLines } from '../../kiosk/daybook/record-lines.ts';
import { adviceLines, CARD_FIGURES, figureWords } from '../../kiosk/dose-card/card-figures.ts';
import { drawWords } from '../../kiosk/platform/draw-words.ts';
import { enWhole as en } from '../../kiosk/words/en-whole.ts';
import { Show } from '../../kiosk/words/show.ts';
import { displayFaults, dosesIn } from '../oracles/display-faults.ts';
import { openScene } from './open-scene.ts';
import { treatment } from './preview/base-state.ts';
import { offered } from './preview/dose-card-scenes.ts';
import { SCENES } from './preview/scenes.ts';

/** The text of every element that holds words of its own, with what stands inside it. */
function texts(root: ParentNode): string[] {
  return [...root.querySelectorAll('*')]
    .filter((element) => [...element.childNodes].some((node) => node.nodeType === 3))
    .filter((element) => element.closest('script, style') === null)
    .map((element) => element.textContent.replaceAll(/\s+/g, ' '));
}

describe('the checker itself', () => {
  test.each([
    ['.5 mL', 'zero stands before'],
    ['5.0 mL', 'no zero stands last'],
    ['10mL', 'space'],
    ['3 cc', 'cc'],
    ['3 ml', 'capital L'],
    ['1000 mL', 'commas'],
    ['200 µg', 'µg'],
    ['give 5 mL.', 'full stop'],
    ['12.0 mg/kg', 'no zero stands last'],
  ])('finds %s', (text, rule) => {
    expect(displayFaults(text).join()).toContain(rule);
  });

  test.each(['0.5 mL', '1,000 mL at 49.45 mg/mL', 'it weighs 30.0 lb', '52 g packet', '21 CFR 520.1242a(a)'])(
    'lets %s pass',
    (text) => expect(displayFaults(text)).toEqual([]),
  );
});

test('every screen there is shows its doses by the rules', async () => {
  let doses = 0;
  for (const scene of SCENES) {
    const app = await openScene(scene);
    const all = texts(document.body);
    await app.close();
    doses += all.reduce((sum, text) => sum + dosesIn(text), 0);
    expect({ scene: scene.name, faults: all.flatMap(displayFaults) }).toEqual({
      scene: scene.name,
      faults: [],
    });
  }
  expect(doses).toBeGreaterThan(300);
}, 120_000);

test('every sentence with a dose in it keeps the rules, whatever the dose', () => {
  let doses = 0;
  const show = new Show({ unit: 'lb', division: 50, benchDivision: 1, locale: 'en-GB', nowMs: 0 });
  fc.assert(
    fc.property(
      fc.double({ min: 2.4, max: 140, noNaN: true }),
      fc.double({ min: 0, max: 0.2, noNaN: true }),
      (kg, doubt) => {
        const { offer, card } = offered('Pip', kg, 1000 * kg * doubt);
        if (offer == null || card == null) throw new Error('nothing on offer');
        const { id: _, agitate: __, cautions: ___, expiresAt: ____, ...measured } = offer;
        const { value, high } = offer.deliveredMgPerKg;
        const values = {
          value,
          high,
          target: 12,
          ceiling: 18,
          leftMl: 1234.5,
          grams: 1000 * kg,
          lastGrams: 900 * kg,
        };
        const said = [
          ...CARD_FIGURES.map((figure) => figureWords(figure, offer, card, en, show)).flatMap((each) => [
            each.value,
            each.off,
            ...each.sources,
          ]),
          ...adviceLines(card, en, show),
          drawWords(offer, en, show),
          ...recordLines(treatment('t1', measured), en, show).map((line) => line.value),
          ...CAUTION_CODES.map((code) => en.cautions[code](values, show)).flatMap((each) => [
            each.title,
            each.detail,
            each.accept,
          ]),
          show.volume(1234.5),
          show.exact(offer.exactVolumeMl),
          en.home.strengthAndLeft(show.strength(offer.strengthMgPerMl), show.volume(1e6)),
        ];
        doses += said.reduce((sum, text) => sum + dosesIn(text), 0);
        expect(said.flatMap(displayFaults)).toEqual([]);
      },
    ),
    { numRuns: 200 },
  );
  expect(doses).toBeGreaterThan(4000);
});
