// Which files are tests, and the clock they run under.

import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.{ts,tsx}', 'e2e/**/*.test.ts'],
    env: { TZ: 'UTC' },
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
  },
});
