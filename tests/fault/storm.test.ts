import { expect, test } from 'vitest';
import { socatPresent } from '../hardware/socat-present.ts';
import { storm } from './storm.ts';

// `npm run soak -- storm` does it for five minutes.
test.skipIf(!socatPresent)(
  'scales and a wand that send noise at full line rate, and one that is pulled and plugged, hold the kiosk up in nothing',
  async () => {
    const report = await storm(6, 7);
    console.log(report);
    expect(report).toMatchObject({ answered: report.asked, weightsShown: 0 });
    // Else there was no storm.
    expect(report.plugs).toBeGreaterThan(3);
    expect(report.noiseBytes).toBeGreaterThan(20_000);
    // A machine that runs all other tests beside it is slow; what leaks or blocks is slower by far.
    expect(report.slowestAnswerMs).toBeLessThan(5000);
    expect(report.after.residentMb - report.before.residentMb).toBeLessThan(40);
    expect(report.after.descriptors - report.before.descriptors).toBeLessThanOrEqual(6);
  },
  120_000,
);
