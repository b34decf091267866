import { afterEach, describe, expect, test, vi } from 'vitest';
import { Footswitch } from '../../../kiosk/hearing/footswitch.ts';
import { Talk } from '../../../kiosk/hearing/talk.ts';

let footswitch: Footswitch | undefined;
const told: boolean[] = [];
const talk = (): Talk => {
  told.length = 0;
  return new Talk((on) => told.push(on));
};

afterEach(() => footswitch?.end());

function key(kind: 'keydown' | 'keyup', code: string, repeat = false): KeyboardEvent {
  const event = new KeyboardEvent(kind, { code, repeat, bubbles: true, cancelable: true });
  document.body.dispatchEvent(event);
  return event;
}

describe('what is held to talk', () => {
  test('lasts until the last of it is let go', () => {
    const held = talk();
    held.press('plate');
    held.press('KeyB');
    held.release('plate');
    expect(held.on).toBe(true);
    held.release('KeyB');
    held.release('KeyB');
    expect(told).toEqual([true, false]);
  });
});

describe('the footswitch', () => {
  test('talks while its key is down, and nothing else on the page hears of that key', () => {
    footswitch = new Footswitch(talk());
    footswitch.use('Space');
    const heard = vi.fn();
    document.body.addEventListener('keydown', heard);
    const down = key('keydown', 'Space');
    key('keydown', 'Space', true);
    key('keydown', 'Space', true);
    expect(told).toEqual([true]);
    key('keyup', 'Space');
    expect(told).toEqual([true, false]);
    expect(down.defaultPrevented).toBe(true);
    expect(heard).not.toHaveBeenCalled();
    document.body.removeEventListener('keydown', heard);
  });

  test('leaves every other key alone, and all of them where none was learnt', () => {
    footswitch = new Footswitch(talk());
    expect(key('keydown', 'KeyA').defaultPrevented).toBe(false);
    footswitch.use('F13');
    expect(key('keydown', 'KeyA').defaultPrevented).toBe(false);
    expect(told).toEqual([]);
  });

  test.each(['blur', 'visibilitychange'])('is let go by %s, since its end might never be heard', (event) => {
    footswitch = new Footswitch(talk());
    footswitch.use('F13');
    key('keydown', 'F13');
    (event === 'blur' ? window : document).dispatchEvent(new Event(event));
    expect(told).toEqual([true, false]);
    key('keyup', 'F13');
    expect(told).toEqual([true, false]);
  });

  test('another key that is learnt lets the one before go', () => {
    footswitch = new Footswitch(talk());
    footswitch.use('F13');
    key('keydown', 'F13');
    footswitch.use('F14');
    expect(told).toEqual([true, false]);
  });

  test('is learnt by pressing it: a key without a name is told, and the next may be one with', () => {
    footswitch = new Footswitch(talk());
    footswitch.use('F13');
    const learnt: (string | null)[] = [];
    footswitch.learn((code) => learnt.push(code));
    key('keydown', '');
    key('keydown', 'F13');
    key('keydown', 'F15');
    expect(learnt).toEqual([null, 'F13']);
    expect(told).toEqual([]);
  });

  test('a learning that was given up learns nothing', () => {
    footswitch = new Footswitch(talk());
    const learnt: (string | null)[] = [];
    footswitch.learn((code) => learnt.push(code));
    footswitch.learn(null);
    expect(key('keydown', 'F13').defaultPrevented).toBe(false);
    expect(learnt).toEqual([]);
  });
});
