import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { browserForTests } from './browser.ts';

/**
 * The whole test command: format and lint, types, every vitest suite, then the app in a browser.
 * `--quick` leaves the browser and the slow outside checks away. Ends with the counts on one line.
 */
const quick = process.argv.includes('--quick');
// Whole paths: each runner takes a relative one from a folder of its own choosing.
const results = join(import.meta.dirname, 'results');
const counts = { passed: 0, failed: 0, skipped: 0 };
const broken: string[] = [];

rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

step('format and lint', ['node_modules/@biomejs/biome/bin/biome', 'check', '.']);
for (const folder of ['core', 'db', 'electron', 'renderer', 'tests']) {
  step(`types in ${folder}`, ['node_modules/typescript/bin/tsc', '-p', folder]);
}

const vitestReport = `${results}/vitest.json`;
step('unit, outside, database and host tests', [
  'node_modules/vitest/vitest.mjs',
  'run',
  '--config',
  'tests/vitest.config.ts',
  ...(quick ? ['--exclude', 'tests/outside/**', '--exclude', 'tests/hosts/**'] : []),
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${vitestReport}`,
]);
countVitest(vitestReport);

if (!quick) browserTests();

console.log('');
for (const name of broken) console.log(`Failed: ${name}`);
console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
process.exit(broken.length > 0 || counts.failed > 0 || counts.passed === 0 ? 1 : 0);

function step(name: string, args: readonly string[], env: NodeJS.ProcessEnv = process.env): void {
  const started = Date.now();
  console.log(`\n== ${name}`);
  const { status } = spawnSync(process.execPath, args, { stdio: 'inherit', env });
  const seconds = ((Date.now() - started) / 1000).toFixed(1);
  console.log(`== ${name}: ${status === 0 ? 'good' : 'FAILED'} (${seconds} s)`);
  if (status !== 0) broken.push(name);
}

function browserTests(): void {
  const browser = browserForTests();
  if (!browser) {
    console.log('\nNo browser could be found or brought. Not run: everything in tests/app.');
    console.log('Install Chromium or Chrome, or name one in UNDERTRIM_BROWSER, and run the tests again.');
    if (process.env.CI) broken.push('tests in the browser (no browser)');
    return;
  }
  console.log(`\nBrowser: ${browser.path} (${browser.from})`);
  step('build', ['electron/build.ts']);
  const report = `${results}/playwright.json`;
  step(
    'the app in a browser',
    ['node_modules/@playwright/test/cli.js', 'test', '--config', 'tests/app/playwright.config.ts'],
    { ...process.env, UNDERTRIM_BROWSER: browser.path, PLAYWRIGHT_JSON_OUTPUT_NAME: report },
  );
  countPlaywright(report);
}

function countVitest(path: string): void {
  if (!existsSync(path)) return;
  const report = JSON.parse(readFileSync(path, 'utf8'));
  counts.passed += report.numPassedTests;
  counts.failed += report.numFailedTests;
  counts.skipped += report.numPendingTests + report.numTodoTests;
}

function countPlaywright(path: string): void {
  if (!existsSync(path)) return;
  const { stats } = JSON.parse(readFileSync(path, 'utf8'));
  counts.passed += stats.expected + stats.flaky;
  counts.failed += stats.unexpected;
  counts.skipped += stats.skipped;
}
