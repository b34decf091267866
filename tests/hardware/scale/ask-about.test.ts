import { expect, test } from 'vitest';
import { grams, kilograms } from '../../../core/quantity/mass.ts';
import { askAbout } from '../../../hardware/scale/ask-about.ts';
import type { ScaleProfile } from '../../../hardware/scale/profile.ts';
import { scaleProfile } from '../../../hardware/scale/profiles.ts';
import { withEvenParity, withoutEvenParity } from '../../../hardware/serial/seven-bits.ts';
import { createMemoryCable } from '../../../hardware/simulator/memory-cable.ts';
import { createSimScale } from '../../../hardware/simulator/sim-scale.ts';
import type { SimFormat } from '../../../hardware/simulator/sim-voice.ts';
import { ManualTimers } from '../manual-timers.ts';

function profileOf(line?: '7e1'): ScaleProfile {
  const profile = scaleProfile('sma', line === undefined ? {} : { line });
  if (profile === undefined) throw new Error('the polled format is gone');
  return profile;
}

async function plugged(format: SimFormat, sevenBits = false) {
  const timers = new ManualTimers();
  const scale = createSimScale({
    timers,
    face: { unit: 'kg', division: grams(20) },
    capacity: kilograms(150),
    format,
    load: () => grams(0),
    changing: () => false,
  });
  const cable = createMemoryCable('/dev/one', timers, (line) =>
    scale.attach(
      sevenBits
        ? {
            ...line,
            write: (bytes) => line.write(withEvenParity(bytes)),
            onData: (listener) => line.onData((chunk) => listener(withoutEvenParity(chunk))),
          }
        : line,
    ),
  );
  await cable.plug();
  return { timers, cable };
}

test.each([false, true])(
  'a scale tells who it is and what it carries (seven bits: %s)',
  async (sevenBits) => {
    const { timers, cable } = await plugged('sma', sevenBits);
    const profile = profileOf(sevenBits ? '7e1' : undefined);
    const asked = askAbout({
      path: '/dev/one',
      baud: 9600,
      profile,
      sevenBits,
      openPort: cable.openPort,
      timers,
    });
    await timers.advance(5000);
    const about = await asked;
    expect(about).toMatchObject({ protocol: '2/1.0', model: 'SIM', commands: 'HPTMC' });
    expect(about.ranges).toHaveLength(1);
    expect(about.ranges[0]).toMatchObject({ unit: 'kg', capacity: grams(150_000) });
    expect(about.ranges[0]?.division.value).toBeCloseTo(20, 9);
    // The port was let go.
    await (await cable.openPort('/dev/one', 9600)).close();
  },
);

test('a scale that speaks another language tells nothing, and soon', async () => {
  const { timers, cable } = await plugged('header-comma');
  const profile = profileOf();
  const asked = askAbout({
    path: '/dev/one',
    baud: 9600,
    profile,
    sevenBits: false,
    openPort: cable.openPort,
    timers,
  });
  await timers.advance(4000);
  expect(await asked).toMatchObject({ protocol: null, ranges: [] });
});
