import { mkdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { isStale } from '#electron/build/is-stale.ts';
import { dataFolder } from '#electron/data-folder.ts';
import { desktopHindrance, desktopProgram } from '#electron/desktop/start-desktop.ts';
import { windowCommand } from '#electron/loopback/open-window.ts';
import { readStartOptions } from '#electron/start-options.ts';
import { startTrouble } from '#electron/start-trouble.ts';
import { freshFolder } from './fresh-folder.ts';

test('data lies where each system keeps a user’s data', () => {
  expect(dataFolder('linux', {}, '/home/t')).toBe('/home/t/.local/share/undertrim');
  expect(dataFolder('linux', { XDG_DATA_HOME: '/data' }, '/home/t')).toBe('/data/undertrim');
  expect(dataFolder('linux', { XDG_DATA_HOME: 'not-absolute' }, '/home/t')).toBe(
    '/home/t/.local/share/undertrim',
  );
  expect(dataFolder('darwin', {}, '/Users/t')).toBe('/Users/t/Library/Application Support/Undertrim');
  expect(dataFolder('win32', { APPDATA: 'C:/Roaming' }, 'C:/t')).toContain('Undertrim');
});

test('start options are read, and what is wrong with them is said', () => {
  const data = '/tmp/maps';
  expect(readStartOptions(['--data', data])).toEqual({ data, port: 0, window: true, loopbackOnly: false });
  expect(readStartOptions(['--data', data, '--no-window'])).toMatchObject({
    window: false,
    loopbackOnly: true,
  });
  expect(readStartOptions(['--data', data, '--port', '8123'])).toMatchObject({
    port: 8123,
    loopbackOnly: true,
  });
  expect(readStartOptions(['--host', 'loopback'])).toMatchObject({ window: true, loopbackOnly: true });
  for (const words of [
    ['--port', '70000'],
    ['--port', '8x'],
    ['--host', 'all'],
    ['--data', ''],
    ['--colour'],
  ]) {
    expect(readStartOptions(words), words.join(' ')).toBeTypeOf('string');
  }
});

test('a window opens in Chromium where it is found, else with the system’s opener, else not at all', () => {
  const address = 'http://127.0.0.1:8123/#t';
  const on = (platform: NodeJS.Platform, display: boolean, present: string[]) =>
    windowCommand(address, platform, { PATH: '/a:/b', ...(display ? { DISPLAY: ':0' } : {}) }, (file) =>
      present.includes(file),
    );
  expect(on('linux', true, ['/b/chromium', '/a/xdg-open'])).toEqual({
    program: '/b/chromium',
    words: [`--app=${address}`],
  });
  expect(on('linux', true, ['/a/xdg-open'])).toEqual({ program: '/a/xdg-open', words: [address] });
  expect(on('linux', true, [])).toBeNull();
  expect(on('linux', false, ['/b/chromium'])).toBeNull();
  expect(on('darwin', false, [])).toEqual({ program: 'open', words: [address] });
  expect(on('win32', false, [])?.words.at(-1)).toBe(address);
});

test('the desktop window is told apart by its program on the disk, without fetching', () => {
  const folder = freshFolder();
  expect(desktopProgram(folder, {})).toBeNull();
  mkdirSync(join(folder, 'dist'));
  writeFileSync(join(folder, 'path.txt'), 'electron.exe');
  expect(desktopProgram(folder, {})).toBeNull();
  writeFileSync(join(folder, 'dist', 'electron.exe'), '');
  expect(desktopProgram(folder, {})).toBe(join(folder, 'dist', 'electron.exe'));
  expect(desktopProgram(folder, { ELECTRON_OVERRIDE_DIST_PATH: '/nowhere' })).toBeNull();
});

test('no desktop window is tried without a display or as root', () => {
  expect(desktopHindrance('linux', {}, 1000)).toContain('display');
  expect(desktopHindrance('linux', { DISPLAY: ':0' }, 0)).toContain('root');
  expect(desktopHindrance('linux', { DISPLAY: ':0' }, 1000)).toBeNull();
  expect(desktopHindrance('win32', {}, undefined)).toBeNull();
});

test('a built page is stale when anything it is made from is newer', () => {
  const folder = freshFolder();
  const source = join(folder, 'source');
  mkdirSync(join(source, 'built'), { recursive: true });
  const [old, built] = [join(source, 'a.ts'), join(folder, 'built.js')];
  for (const file of [old, built, join(source, 'built', 'out.js')]) writeFileSync(file, '');
  utimesSync(old, 1_000, 1_000);
  utimesSync(source, 1_000, 1_000);
  utimesSync(built, 2_000, 2_000);
  expect(isStale(built, [source])).toBe(false);
  utimesSync(old, 3_000, 3_000);
  expect(isStale(built, [source])).toBe(true);
  expect(isStale(join(folder, 'missing.js'), [source])).toBe(true);
});

test('why a start failed is said with the folder and the way out', () => {
  for (const problem of [
    { code: 'store-busy' },
    { code: 'store-newer', found: 9, known: 1 },
    { code: 'store-damaged', detail: 'page 3' },
    { code: 'store-read-only' },
    { code: 'store-full' },
  ] as const) {
    expect(startTrouble(problem, '/data')).toMatch(/\/data/);
  }
});
