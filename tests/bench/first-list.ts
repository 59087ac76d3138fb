import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { printedAddress } from '../app/app-host.ts';

/**
 * `npm run bench:first`: what somebody new waits for. A fresh clone, the README's first command, the page it
 * names, a press on the sample job, and the first place to open. Packages come from npm's own cache where it
 * has them, so the first line depends on the machine and its network.
 */
const root = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'undertrim-first-'));
const clone = join(folder, 'undertrim');
let host: ChildProcess | undefined;

try {
  execFileSync('git', ['clone', '--quiet', root, clone]);
  const seconds = stopwatch();
  execFileSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: clone, stdio: 'ignore' });
  line('npm ci', seconds());
  const app = spawn(
    'npm',
    ['start', '--', '--host', 'loopback', '--no-window', '--data', join(folder, 'data')],
    {
      cwd: clone,
      detached: true,
    },
  );
  host = app;
  const address = await printedAddress(app);
  line('npm start, until the app answers', seconds());
  const executablePath = process.env.UNDERTRIM_BROWSER ?? '/usr/bin/chromium';
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  seconds();
  await page.goto(address);
  await page.getByText('STOCK 417').click();
  const first = page.getByRole('listitem').filter({ hasText: 'By then' }).first();
  await first.waitFor({ timeout: 60_000 });
  line('from the address to the first place to open', seconds());
  await browser.close();
} finally {
  // The whole group: npm, and the program it started.
  if (host?.pid) process.kill(-host.pid, 'SIGTERM');
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}

/** Seconds since it was asked last. */
function stopwatch(): () => number {
  let last = performance.now();
  return () => {
    const now = performance.now();
    const passed = (now - last) / 1_000;
    last = now;
    return passed;
  };
}

function line(name: string, seconds: number): void {
  console.log(`${name.padEnd(48)}${seconds.toFixed(1).padStart(7)} s`);
}
