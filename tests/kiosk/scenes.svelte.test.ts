import { expect, test } from 'vitest';
import { KioskState } from '../../shared/state.ts';
import { mountApp } from './mount-app.ts';
import { openScene } from './open-scene.ts';
import { SCENES } from './preview/scenes.ts';

/** The least that must be on screen in each step. */
const SHOWN: Readonly<Record<string, readonly string[]>> = {
  home: ['door-platform', 'door-jug', 'door-daybook', 'door-shed', 'in-service'],
  safety: ['safety-read', 'demo-banner'],
  problem: ['problem'],
  'no-jug': ['jug-tile', 'mix-a-jug'],
  'no-jug-none': ['mix-a-jug'],
  'prove-jug': ['prove-jug-yes', 'other-jug'],
  'visit-settling': ['platform-live', 'who', 'skip', 'unanswered'],
  'visit-who': ['platform-held', 'platform-live', 'animal-tile', 'skip'],
  'which-animal': ['animal-tile', 'skip'],
  'caution-stop': ['caution', 'skip'],
  'caution-ask': ['caution', 'accept-caution', 'skip', 'animal-name', 'platform-held'],
  offered: ['dose-volume', 'dose-strength', 'dose-syringe', 'dose-interval', 'give', 'skip', 'other-outcome'],
  'offered-unanswered': ['unanswered', 'give'],
  'offered-tray': [
    'tray-lead-on',
    'tray-pour',
    'tray-pour-stop',
    'tray-powder-half',
    'tray-pull-bench',
    'give',
  ],
  logging: ['logging'],
  logged: ['undo', 'next', 'animal-name', 'logged-volume'],
  undo: ['correct-not-given', 'correct-wrong-animal', 'correct-wrong-volume'],
  'jug-idle': ['packet-tile', 'jug-tile'],
  'jug-kept': ['jug-discard', 'jug-strength', 'print'],
  'jug-dilution': [
    'dilution-next',
    'dilution-facts',
    'dilution-reason',
    'mix-this',
    'mix-amount',
    'mix-mode',
  ],
  'jug-amount': ['amount-tile'],
  'jug-mode': ['mode-tile'],
  'jug-place-known': ['stands-like', 'known-jugs', 'mix-next'],
  'jug-new': ['jug-is-new', 'jug-again', 'mix-cancel'],
  'jug-new-heavier': ['jug-is-new', 'jug-is-known', 'jug-again', 'jug-doubt'],
  'jug-new-holds-mix': ['jug-again', 'mix-cancel'],
  'jug-pour-far-over': ['mix-next', 'jug-now'],
  'jug-powder-weighed': ['powder-in', 'powder-verdict'],
  'prove-jug-fits': ['prove-jug-yes', 'bench-proof', 'other-jug'],
  'prove-jug-otherwise': ['prove-jug-yes', 'bench-proof', 'other-jug'],
  'jug-water': ['water-tile', 'mix-cancel'],
  'jug-place': ['jug-now', 'mix-next', 'mix-cancel'],
  'jug-pour-slow': ['jug-now', 'jug-target', 'mix-next'],
  'jug-powder': ['powder-verdict', 'mix-cancel'],
  'jug-powder-lifted': ['powder-verdict', 'mix-cancel'],
  'jug-powder-changed': ['powder-verdict', 'mix-cancel'],
  'visit-done': ['platform-live', 'who'],
  'visit-who-unanswered': ['unanswered', 'animal-tile', 'skip', 'back-to-weight'],
  'logged-unanswered': ['unanswered', 'undo', 'next', 'logged-volume'],
  'jug-dissolve': ['jug-strength', 'mix-next'],
  'jug-label': ['jug-strength', 'label-number', 'hazards', 'mix-next', 'print'],
  daybook: ['daybook-row', 'page-after'],
  'daybook-record': ['correct'],
  shed: [
    'shed-devices',
    'shed-syringes',
    'shed-rules',
    'shed-people',
    'shed-enrol',
    'shed-screen',
    'shed-check',
    'shed-syringe-check',
  ],
  'shed-devices': ['device', 'trouble'],
  'device-list': ['device-platform', 'device-bench', 'device-wand'],
  'device-list-demo': ['use-real', 'setup-closed'],
  'device-home': ['device-find', 'device-remove', 'zero'],
  'device-ports': ['setup-ports', 'port-tile'],
  'device-listening': ['setup-listening', 'setup-drop'],
  'device-failed': ['setup-failed', 'setup-again', 'setup-port'],
  'device-proposals': ['setup-proposals', 'proposal-tile'],
  'device-proposals-lines': ['proposal-tile', 'setup-lines-open'],
  'device-strange': ['setup-nothing', 'setup-lines-open', 'setup-again', 'setup-port'],
  'device-lines': ['setup-lines', 'raw-line', 'setup-patterns'],
  'device-nothing': ['setup-nothing', 'setup-again'],
  'device-trial': ['setup-trial', 'trial-live', 'trial-prove', 'trial-other', 'device-keep-unproved'],
  'device-loads': ['setup-loads', 'trial-live', 'load-kg-20'],
  'device-right': ['device-keep', 'trial-says'],
  'device-steps-asked': ['trial-steps'],
  'device-steps': ['setup-steps', 'steps-1', 'steps-50', 'trial-live'],
  'device-right-told': ['device-keep', 'trial-says'],
  'device-pounds': ['trial-instead'],
  'device-no-tare': ['device-no-tare'],
  'device-wand-read': ['trial-tag', 'device-keep'],
  'device-zero-platform': ['zero', 'platform-live'],
  'shed-syringes': ['syringe-tile'],
  'shed-rules': ['regimen-tile'],
  'shed-rule': ['figure', 'unapproved', 'approve'],
  'shed-rule-approved': ['approved', 'withdraw-approval'],
  'shed-approve': ['approve-label', 'approve-by-vet'],
  'shed-people': ['person-tile'],
  'shed-screen': ['face-glare', 'unit-kg'],
  'caution-scale-unchecked': ['caution', 'accept-caution', 'skip'],
  'caution-scale-failed': ['caution', 'stop-to-shed', 'skip'],
  'check-which': ['check-scale', 'check-rule'],
  'check-last': ['check-result', 'check-error', 'check-begin'],
  'check-rule': ['check-days', 'check-asks', 'check-stops'],
  'check-zero': ['check-now', 'check-next', 'check-cancel'],
  'check-weight': ['check-weight-tile', 'check-cancel'],
  'check-weight-bench': ['check-weight-tile', 'check-cancel'],
  'check-bottle': ['check-bottle', 'check-now', 'check-next'],
  'check-middle': ['check-middle', 'check-now', 'check-next'],
  'check-off': ['check-off', 'check-now', 'check-next'],
  'check-corner': ['check-corner', 'check-now', 'check-next'],
  'check-second': ['check-weight-tile', 'check-skip', 'check-cancel'],
  'check-both': ['check-both', 'check-now', 'check-next'],
  'check-down': ['check-down', 'check-now', 'check-next'],
  'check-result-failed': ['check-result', 'check-error', 'check-skipped', 'check-next'],
  'syringe-check-which': ['syringe-check-tile'],
  'syringe-check-which-none': ['syringe-check-shelf'],
  'syringe-check-mark': ['syringe-check-to'],
  'syringe-check-mark-coarse': ['syringe-check-to', 'needed-step'],
  'syringe-check-water': ['syringe-check-celsius'],
  'syringe-check-cup': ['syringe-check-now', 'syringe-check-next', 'syringe-check-cancel'],
  'syringe-check-deliver': [
    'syringe-check-count',
    'syringe-check-now',
    'syringe-check-next',
    'syringe-check-leave-out',
    'syringe-check-cancel',
  ],
  'syringe-check-result': ['syringe-check-result', 'syringe-check-figure', 'syringe-check-next'],
  'card-offer-kid': ['why', 'give'],
  'card-kid': ['dose-card', 'interval-bar', 'card-advice', 'card-weight', 'card-volume', 'card-back'],
  'card-source-rate': ['figure-source', 'source-back'],
  animals: ['animal-tile', 'tile-advice', 'find', 'whom', 'new-animal'],
  'import-files': ['import-file'],
  'import-ready': ['import-fault', 'page-after', 'import-accept', 'import-drop'],
  'import-order': ['order-day-first', 'order-month-first', 'import-drop'],
  'import-species': ['species-goat', 'import-drop'],
  'import-refused': ['import-drop'],
  'import-written': ['import-done'],
  'animals-by': ['animal-tile', 'show-all'],
  'animals-find': ['find-J', 'find-show'],
  'animals-found': ['prefix', 'find-show', 'find-U'],
  animal: [
    'animal-page-name',
    'animal-what',
    'animal-weight',
    'animal-scores',
    'animal-dose',
    'animal-note',
    'growth-line',
    'score',
    'edit',
    'note',
    'why',
  ],
  'animal-sold': ['animal-left', 'animal-dose'],
  'animal-growth': ['growth-chart', 'trend', 'chart-dot', 'chart-dose', 'chart-score', 'chart-about'],
  'animal-growth-touched': ['chart-picked', 'chart-told'],
  'animal-growth-kid': ['expected'],
  'animal-why': ['reason'],
  'animal-note': ['note-lame', 'note-watch'],
  'animal-score': ['sign-eyelid', 'sign-coat', 'step-1', 'step-5', 'log-scores'],
  'animal-score-body': ['step-1.5', 'step-5', 'log-scores'],
  'animal-score-jaw': ['step-swollen', 'log-scores'],
  'animal-edit': ['edit-class', 'edit-milk', 'edit-bred', 'edit-pen', 'edit-mark', 'edit-tag', 'edit-gone'],
  'animal-bred': ['day-more', 'month-less', 'year-less', 'day-set', 'day-unknown'],
  'animal-tag-read': ['retag-use', 'retag-visual'],
  'animal-gone': ['gone-sold', 'gone-died'],
  'worm-doors': ['worm-whom', 'worm-scores'],
  'worm-scores': ['animal-tile'],
  whom: ['whom-row', 'share-left', 'worm-season', 'egg-count'],
  'whom-eggs': ['keypad-entry'],
  'visit-new-tag': ['new-tag', 'who', 'platform-live'],
  'visit-score': ['score-now', 'animal-name'],
  'skip-score': ['score-first', 'skip-not-needed'],
  'home-herd': ['door-animals', 'door-worm-check'],
  'enrol-tag': ['enrol-with-tag', 'enrol-without-tag'],
};

test.each(SCENES)('the scene $name is a state the server could send', ({ state }) => {
  expect(KioskState.safeParse(state)).toMatchObject({ success: true });
});

test.each(SCENES)('the scene $name draws what its step needs', async (scene) => {
  const app = await openScene(scene);
  try {
    const missing = (SHOWN[scene.name] ?? []).filter((testid) => app.find(testid) === null);
    expect(missing).toEqual([]);
    expect(document.body.textContent).not.toMatch(/undefined|NaN|\[object/);
    expect(document.querySelectorAll('button:not([type="button"])')).toHaveLength(0);
  } finally {
    await app.close();
  }
});

test('the list of what a step needs names only scenes that exist', () => {
  const names = SCENES.map(({ name }) => name);
  expect(Object.keys(SHOWN).filter((name) => !names.includes(name))).toEqual([]);
});

test('every scene but a demo one is without the bench tray', async () => {
  const scene = SCENES.find(({ name }) => name === 'home-no-jug');
  const app = mountApp(scene?.state ?? null, 'home');
  expect(app.find('door-platform')).not.toBeNull();
  expect(app.find('tray-open')).toBeNull();
  expect(app.find('demo-banner')).toBeNull();
  await app.close();
});
