import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Microphone, type MicrophoneState } from '../../../kiosk/hearing/microphone.ts';
import { type FakeMicrophone, fakeMicrophone } from '../fake-microphone.ts';

let fake: FakeMicrophone;
let microphone: Microphone;
let states: MicrophoneState[];
let heard: number[][];

function open(devices: MediaDevices | undefined = navigator.mediaDevices): void {
  states = [];
  heard = [];
  microphone = new Microphone({
    devices,
    onstate: (state) => states.push(state),
    onsound: (samples) => heard.push([...new Int16Array(samples)]),
  });
  microphone.open();
}
const settled = () => vi.advanceTimersByTimeAsync(0);

beforeEach(() => {
  vi.useFakeTimers();
  fake = fakeMicrophone();
});
afterEach(() => {
  microphone.end();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('the microphone of the page', () => {
  test('opens at the rate of the ear, with nothing done to its sound, and hands on what it hears', async () => {
    open();
    await settled();
    expect(states).toEqual(['opening', 'open']);
    expect(microphone.rate).toBe(16_000);
    expect(fake.asked).toEqual([
      {
        audio: { channelCount: 1, echoCancellation: false, noiseSuppression: false, autoGainControl: false },
      },
    ]);
    fake.hears([1, -2, 3]);
    expect(heard).toEqual([[1, -2, 3]]);
    microphone.open();
    await settled();
    expect(fake.asked).toHaveLength(1);
  });

  test.each<[string, MicrophoneState]>([
    ['NotAllowedError', 'blocked'],
    ['SecurityError', 'blocked'],
    ['NotFoundError', 'none'],
    ['OverconstrainedError', 'none'],
    ['NotReadableError', 'busy'],
    ['AbortError', 'busy'],
  ])('a browser that answers %s leaves it %s', async (name, state) => {
    fake.refuse = name;
    open();
    await settled();
    expect(states).toEqual(['opening', state]);
  });

  test('a page that may have none is told so, and asks nobody', () => {
    microphone = new Microphone({
      devices: undefined,
      onstate: (state) => states.push(state),
      onsound: () => {},
    });
    states = [];
    microphone.open();
    expect(states).toEqual(['far']);
  });

  test('unplugged it says so, hands on nothing more, and is found when it is plugged in', async () => {
    open();
    await settled();
    fake.refuse = 'NotFoundError';
    fake.unplug();
    expect(states.at(-1)).toBe('none');
    expect(fake.held).toBe(0);
    fake.hears([1]);
    expect(heard).toEqual([]);
    fake.refuse = null;
    fake.plugIn();
    await settled();
    expect(states.at(-1)).toBe('open');
  });

  test('one that is busy is tried again by itself, one that is blocked only when asked', async () => {
    fake.refuse = 'NotReadableError';
    open();
    await settled();
    fake.refuse = 'NotAllowedError';
    await vi.advanceTimersByTimeAsync(10_000);
    expect(states.at(-1)).toBe('blocked');
    expect(fake.asked).toHaveLength(2);
    fake.refuse = null;
    microphone.open();
    await settled();
    expect(states.at(-1)).toBe('open');
  });

  test('closed while it opens, it is let go as soon as it has come', async () => {
    const come = fake.hold();
    open();
    microphone.close();
    come();
    await settled();
    expect(states).toEqual(['opening', 'closed']);
    expect(fake.held).toBe(0);
    fake.plugIn();
    await settled();
    expect(fake.asked).toHaveLength(1);
  });

  test('sound held back until a touch is no open microphone', async () => {
    fake.flow(false);
    open();
    await settled();
    expect(states).toEqual(['opening', 'untouched']);
    fake.flow(true);
    expect(states.at(-1)).toBe('open');
  });
});
