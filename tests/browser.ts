import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright';

/**
 * Finds a browser for the app tests or brings one: an installed Chromium or Chrome, else Playwright's
 * own download, else Debian's chromium package where it may install one. Null where none can be had.
 */
export function browserForTests(): { readonly path: string; readonly from: string } | null {
  const installed = installedBrowser();
  if (installed) return { path: installed, from: 'installed' };
  const downloaded = playwrightDownload();
  if (downloaded) return { path: downloaded, from: "Playwright's download" };
  installDebianChromium();
  const fromDebian = installedBrowser();
  return fromDebian ? { path: fromDebian, from: "Debian's package" } : null;
}

const places = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:/Program Files/Google/Chrome/Application/chrome.exe',
  'C:/Program Files (x86)/Google/Chrome/Application/chrome.exe',
];

function installedBrowser(): string | null {
  const chosen = process.env.UNDERTRIM_BROWSER;
  if (chosen && existsSync(chosen)) return chosen;
  return places.find((path) => existsSync(path)) ?? null;
}

function playwrightDownload(): string | null {
  const own = chromium.executablePath();
  if (own && existsSync(own)) return own;
  console.log('No Chromium or Chrome installed: trying the download that Playwright offers ...');
  // Two minutes are ample on a working line; a closed one answers at once or never.
  spawnSync(process.execPath, ['node_modules/playwright/cli.js', 'install', 'chromium'], {
    stdio: 'ignore',
    timeout: 120_000,
  });
  return own && existsSync(own) ? own : null;
}

function installDebianChromium(): void {
  if (process.platform !== 'linux' || !existsSync('/usr/bin/apt-get')) return;
  const asRoot = process.getuid?.() === 0 ? [] : ['sudo', '-n'];
  console.log("Trying Debian's chromium package ...");
  const run = (words: readonly string[]): void => {
    const [command = '', ...rest] = [...asRoot, ...words];
    execFileSync(command, rest, {
      stdio: 'ignore',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      timeout: 420_000,
    });
  };
  try {
    run(['apt-get', 'update', '-q']);
    run(['apt-get', 'install', '-y', '-q', '--no-install-recommends', 'chromium']);
  } catch {
    // Not allowed or not reachable: the caller says what then does not run.
  }
}
