import { expect, test, vi } from 'vitest';
import type { MountedApp } from './mount-app.ts';
import { openScene } from './open-scene.ts';
import { treatment } from './preview/base-state.ts';
import { GROUP_SCENES } from './preview/group-scenes.ts';

async function open(name: string): Promise<MountedApp> {
  const scene = GROUP_SCENES.find((each) => each.name === name);
  if (scene === undefined) throw new Error(`there is no scene ${name}`);
  return openScene(scene);
}

function hold(app: MountedApp, testid: string): void {
  vi.useFakeTimers();
  app.press(testid, 'pointerdown');
  vi.advanceTimersByTime(800);
  app.press(testid, 'pointerup');
  vi.useRealTimers();
}

test('a group shows its dose, who sets it, and what the lightest gets of it', async () => {
  const app = await open('group-facts');
  expect(app.text('group-volume')).toBe('7.6 mL');
  expect(app.text('group-heaviest')).toContain('Biscuit');
  expect(app.text('group-lightest')).toContain('16.4 mg/kg (14.9 to 18)');
  expect(app.text('group-lightest')).toContain('never above 18 mg/kg');
  await app.close();
});

test('without the jug proved in hand no dose can be logged, and one tap takes it', async () => {
  const app = await open('group-not-in-hand');
  expect(app.find('group-start')).toBeNull();
  app.click('group-take');
  expect(app.socket.intents).toEqual([expect.objectContaining({ type: 'take-jug', jugId: 'j7' })]);
  await app.close();
});

test('one held press an animal logs the dose shown, for the whole group it was worked out for', async () => {
  const app = await open('group-giving');
  expect(app.text('animal-name')).toBe('Biscuit');
  hold(app, 'group-given');
  expect(app.socket.intents).toEqual([
    expect.objectContaining({
      type: 'give-group',
      jugId: 'j7',
      animalId: 'a4',
      animalIds: ['a4', 'a2', 'a1', 'a3'],
      volumeMl: 7.6,
      accepted: [],
    }),
  ]);
  await app.close();
});

test('what is in the day book since the group began is done, and can be undone', async () => {
  const app = await open('group-giving-second');
  expect(app.text('animal-name')).toBe('Juniper');
  expect(app.text('group-progress')).toBe('1 of 4 given');
  app.click('group-undo');
  expect(app.find('group-given')).toBeNull();
  await app.close();
});

test('a dose by the platform is no dose of the group', async () => {
  const app = await open('group-giving');
  app.patch({ dayBook: [treatment('t10', { animal: 'a4', givenAt: '2026-04-14T14:03:30Z' })] });
  expect(app.text('group-progress')).toBe('0 of 4 given');
  await app.close();
});

test('an animal with an ask cannot be given to before it was accepted', async () => {
  const app = await open('group-ask');
  expect(app.text('animal-name')).toBe('Clover');
  expect(app.find('group-given')).toBeNull();
  hold(app, 'accept-caution');
  hold(app, 'group-given');
  expect(app.socket.intents.at(-1)).toMatchObject({ animalId: 'a1', accepted: ['milk-time-unknown'] });
  await app.close();
});

test('who is in no group is told with the reason', async () => {
  const app = await open('group-out');
  const rows = [...document.querySelectorAll('[data-testid="group-row"]')].map((row) => row.textContent);
  expect(rows.join()).toMatch(/Hazel.*never weighed/s);
  expect(rows.join()).toMatch(/Thistle.*Rule not approved/s);
  await app.close();
});
