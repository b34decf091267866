import { expect, test } from 'vitest';
import { fuzzRequests } from './fuzz-requests.ts';

test('whatever is sent, nothing fails inside, and nobody changes anything who may not', {
  timeout: 60_000,
}, async () => {
  const report = await fuzzRequests(2000, 1);
  expect(report).toMatchObject({ requests: 1800, messages: 200, faults: [], changes: 0 });
  // Else the devices were strangers all the time.
  expect(report.letIn).toBe(600);
});
