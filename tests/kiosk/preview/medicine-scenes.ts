import { SHIPPED } from '../../../core/formulary/shipped.ts';
import { afterDoseView } from '../../../server/view/after-view.ts';
import type { BecauseView } from '../../../shared/board.ts';
import type { JugView } from '../../../shared/jug.ts';
import type { KioskState } from '../../../shared/state.ts';
import { BASE, JUG, treatment } from './base-state.ts';
import type { Scene } from './scene.ts';

const BOTTLE = {
  ...JUG,
  id: 'b8',
  form: 'bottle' as const,
  number: 8,
  medicine: 'Fenbendazole',
  active: 'fenbendazole',
  strengthMgPerMl: 100,
  volumeMl: 1000,
  remainingMl: 940,
  mixedAt: '2026-04-12T08:00:00Z',
  useBy: '2026-07-11T08:00:00Z',
  notes: [],
  storage: [{ keep: 'not-warm-or-frozen' as const, text: 'Keep at or below 25 °C; do not freeze' }],
};

const THIAMINE = {
  ...BOTTLE,
  id: 'b9',
  number: 9,
  medicine: 'Thiamine (B1)',
  active: 'thiamine',
  strengthMgPerMl: 200,
  notes: [],
};
/** A jug whose medicine is kept cold and dark. */
const COLD: JugView = { ...JUG, storage: [{ keep: 'dark', text: 'Keep from light' }], refrigerate: true };

/** What keeps an animal of the board back. */
const NINE_DAYS: BecauseView = {
  medicine: 'Levamisole',
  from: '2026-04-09T13:32:00Z',
  unit: 'days',
  value: 9,
  evidence: 'secondary',
  source: 'Goat anthelmintic chart, July 2006 (Univ. Georgia, Univ. Kentucky), read in a copy: 9 days',
};
const UNKNOWN: BecauseView = {
  ...NINE_DAYS,
  value: null,
  evidence: 'not-known',
  source: 'No source read. Ask the vet: the milk is not for people until a time is given',
};
const NEVER: BecauseView = {
  ...UNKNOWN,
  evidence: 'not-for-people',
  source: '21 CFR 520.1454, eCFR text of 2026-04-05; 70 FR 76163 (2005): not in ewes giving milk for people',
};

/** A board with one animal of each standing at its head. */
const BOARD: KioskState['board'] = BASE.board.map((row, i) => {
  const treatment = `t${i}`;
  if (i === 0)
    return {
      ...row,
      milk: { kind: 'unknown', treatment, because: UNKNOWN },
      meat: { kind: 'at', at: '2026-04-18T13:32:00Z', provisional: false, treatment, because: NINE_DAYS },
    };
  if (i === 1)
    return {
      ...row,
      milk: { kind: 'not-for-people', treatment, because: NEVER },
      meat: { kind: 'unknown', treatment, because: UNKNOWN },
    };
  if (i === 2)
    return {
      ...row,
      milk: null,
      meat: { kind: 'at', at: '2026-04-24T09:00:00Z', provisional: true, treatment, because: NINE_DAYS },
    };
  return row;
});
const at = (changes: Partial<KioskState>): KioskState => ({ ...BASE, ...changes });
const held = at({ board: BOARD });

/** Bottles, and the board of what is kept back. */
export const MEDICINE_SCENES: readonly Scene[] = [
  { name: 'bottle-which', place: 'jug/bottle', state: at({}) },
  { name: 'bottle-size', place: 'jug/bottle', state: at({}), taps: ['bottle-liquid'] },
  {
    name: 'bottle-expiry',
    place: 'jug/bottle',
    state: at({}),
    taps: ['bottle-liquid', 'bottle-ml', 'bottle-month-more'],
  },
  { name: 'bottle-kept', place: 'jug/b8', state: at({ jugs: [BOTTLE, JUG] }) },
  { name: 'bottle-or-jug', place: 'platform', state: at({ jugs: [BOTTLE, JUG] }) },
  { name: 'jug-with-bottle', place: 'jug', state: at({ jugs: [BOTTLE, JUG] }) },
  { name: 'home-held-back', place: 'home', state: held },
  {
    name: 'shed-approve-rate',
    place: 'shed/rules/fenbendazole-sheep/approve',
    state: at({}),
    taps: ['approve-by-vet', 'key-5', 'key-point', 'key-5'],
  },
  {
    name: 'shed-approve-rate-days',
    place: 'shed/rules/fenbendazole-sheep/approve',
    state: at({}),
    taps: ['approve-by-vet', 'key-5', 'key-done', 'vet-unnamed'],
  },
  {
    name: 'shed-rules-trouble',
    place: 'shed/rules',
    state: at({
      shed: {
        ...BASE.shed,
        formularyTrouble: [
          'Entry 1 of medicines.json is left out: regimens.0.target: the two rates disagree: one in mg/lb is 0.454 times the one in mg/kg for the same dose. Correct it in the file, then start the kiosk again.',
        ],
      },
    }),
  },
  {
    name: 'after-logged',
    place: 'platform',
    state: at({
      round: {
        step: 'logged',
        jugId: 'j7',
        animal: 'a1',
        weight: null,
        onDeck: false,
        treatment: treatment('t9', { animalName: 'Clover' }),
        after: afterDoseView('levamisole', SHIPPED),
        followUps: [],
        undoUntil: '2026-04-14T14:04:00Z',
        unanswered: [],
      },
    }),
  },
  {
    name: 'after-dose',
    place: 'platform',
    state: at({
      round: {
        step: 'logged',
        jugId: 'j7',
        animal: 'a1',
        weight: null,
        onDeck: false,
        treatment: treatment('t9', { animalName: 'Clover' }),
        after: afterDoseView('levamisole', SHIPPED),
        followUps: [],
        undoUntil: '2026-04-14T14:04:00Z',
        unanswered: [],
      },
    }),
    taps: ['after-open'],
  },
  {
    name: 'after-dose-extra',
    place: 'platform',
    state: at({
      jugs: [JUG, THIAMINE],
      round: {
        step: 'logged',
        jugId: 'j7',
        animal: 'a1',
        weight: null,
        onDeck: false,
        treatment: treatment('t9', { animalName: 'Clover' }),
        after: afterDoseView('levamisole', SHIPPED),
        followUps: [{ jugId: 'b9', rest: false }],
        undoUntil: '2026-04-14T14:04:00Z',
        unanswered: [],
      },
    }),
    taps: ['after-open'],
  },
  { name: 'in-service-kept', place: 'home', state: at({ jugs: [COLD] }) },
  { name: 'jug-kept-cold', place: 'jug/j7', state: at({ jugs: [COLD] }) },
  { name: 'board', place: 'board', state: held },
  { name: 'board-why', place: 'board/a1', state: held },
  { name: 'board-vet-time', place: 'board/a1/vet', state: held, taps: ['late-milk-more', 'late-milk-more'] },
];
