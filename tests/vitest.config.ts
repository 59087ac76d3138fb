import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['node_modules/**', 'tests/app/**'],
    // Left to itself it keeps one core free, which on two cores means one file after the other.
    maxWorkers: '100%',
    testTimeout: 40_000,
  },
});
