import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';
import TallyReporter from './run/tally-reporter.ts';

/** All processors: left alone, one is kept free, which is half of two. Only for tests that wait for no clock or device. */
const ALL_PROCESSORS = '100%';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  test: {
    reporters: ['default', new TallyReporter()],
    projects: [
      {
        root,
        test: {
          name: 'rooms',
          environment: 'node',
          include: [
            'tests/core/**/*.test.ts',
            'tests/server/**/*.test.ts',
            'tests/shared/**/*.test.ts',
            'tests/*.test.ts',
          ],
          // A process for each of some hundred files would take longer than their tests do.
          isolate: false,
          maxWorkers: ALL_PROCESSORS,
          testTimeout: 30_000,
        },
      },
      {
        root,
        test: {
          name: 'cables',
          environment: 'node',
          include: ['tests/hardware/**/*.test.ts'],
          sequence: { groupOrder: 1 },
          testTimeout: 30_000,
        },
      },
      {
        root,
        plugins: [svelte()],
        resolve: { conditions: ['browser'] },
        test: {
          name: 'kiosk',
          environment: 'happy-dom',
          include: ['tests/kiosk/**/*.test.ts'],
          maxWorkers: ALL_PROCESSORS,
          testTimeout: 30_000,
        },
      },
      {
        root,
        test: {
          name: 'whole',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts', 'tests/process/**/*.test.ts', 'tests/fault/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 60_000,
          fileParallelism: false,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
