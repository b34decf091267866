import { describe, expect, it } from 'vitest';
import { soak } from './soak.ts';
import { socatPresent } from './socat-present.ts';

const name = socatPresent
  ? 'is ready again each time, with no old weight, no old command and no descriptor kept'
  : 'is ready again each time (left out: socat is not installed)';

describe('a scale that is unplugged 25 times', () => {
  it.skipIf(!socatPresent)(
    name,
    async () => {
      const report = await soak(25);
      expect(report).toMatchObject({ cycles: 25, readyAgain: 25, stale: 0, queued: 0 });
      expect(report.leakedDescriptors).toBeLessThanOrEqual(1);
      expect(report.slowestMs).toBeLessThan(3000);
    },
    180_000,
  );
});
