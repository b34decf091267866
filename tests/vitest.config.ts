import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';
import TallyReporter from './run/tally-reporter.ts';

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
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/kiosk/**', 'tests/browser/**', 'tests/process/**', 'tests/fault/**'],
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
        },
      },
    ],
  },
});
