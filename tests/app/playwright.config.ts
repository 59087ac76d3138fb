import { join } from 'node:path';
import { defineConfig } from '@playwright/test';

const root = join(import.meta.dirname, '../..');

export default defineConfig({
  testDir: import.meta.dirname,
  testMatch: '*.spec.ts',
  outputDir: join(root, 'tests/results/app'),
  timeout: 120_000,
  // Waiting longer costs nothing where all is well, and a busy machine is no fault of the app.
  expect: { timeout: 20_000 },
  // Each story has an app and a data folder of its own; drawing a whole car takes as long as most others together.
  workers: 2,
  retries: 0,
  reporter: [['list'], ['json', { outputFile: process.env.PLAYWRIGHT_JSON_OUTPUT_NAME }]],
  use: {
    actionTimeout: 20_000,
    headless: true,
    viewport: { width: 1440, height: 900 },
    launchOptions: {
      executablePath: process.env.UNDERTRIM_BROWSER ?? '/usr/bin/chromium',
      args: ['--no-sandbox', '--disable-background-networking', '--disable-quic'],
    },
    // A trace costs more than the story it follows, and stories with one and without would not be told side by side.
    trace: 'off',
    screenshot: 'only-on-failure',
  },
});
