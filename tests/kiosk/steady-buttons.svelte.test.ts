import { expect, test } from 'vitest';
import type { KioskState } from '../../shared/state.ts';
import { mountApp } from './mount-app.ts';
import { openScene } from './open-scene.ts';
import { SCENES } from './preview/scenes.ts';

/** The state as it comes a moment later: every part new from the wire, the counters on, the scales a little off. */
function aMomentLater(state: KioskState): KioskState {
  const later = structuredClone(state);
  for (const { counters } of later.shed.devices) counters.frames += 10;
  if (later.platform.live !== null) later.platform.live += 50;
  if (later.bench.live !== null) later.bench.live += 1;
  for (const animal of later.animals) if (animal.lastWeightGrams !== null) animal.lastWeightGrams += 1;
  for (const jug of later.jugs) jug.remainingMl -= 1;
  return later;
}

test.each(SCENES)('a patch puts no new button under a finger in $name', async (scene) => {
  const app = await openScene(scene);
  try {
    const before = [...document.querySelectorAll('button')];
    for (let times = 0; times < 2; times += 1) app.patch(aMomentLater(scene.state));
    const gone = before.filter((button) => !button.isConnected);
    expect(gone.map((button) => button.dataset['testid'])).toEqual([]);
    expect(document.querySelectorAll('button')).toHaveLength(before.length);
  } finally {
    await app.close();
  }
});

test('a tap that a patch cuts in two still counts', async () => {
  const scene = SCENES.find(({ name }) => name === 'jug-idle');
  if (scene === undefined) throw new Error('no idle jug among the scenes');
  const app = mountApp(scene.state, scene.place);
  try {
    app.press('packet-tile', 'pointerdown');
    const finger = app.get('packet-tile');
    app.patch(aMomentLater(scene.state));
    app.press('packet-tile', 'pointerup');
    finger.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, detail: 1 }));
    expect(app.socket.intents).toMatchObject([{ type: 'mix-start' }]);
  } finally {
    await app.close();
  }
});
