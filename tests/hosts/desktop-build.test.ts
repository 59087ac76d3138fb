import { readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { buildDesktop } from '#electron/build/build-desktop.ts';
import { freshFolder } from './fresh-folder.ts';

/** Modules a built program asks its surroundings for. */
function outsideModules(text: string): string[] {
  const found = [...text.matchAll(/(?:^import\b[^'"\n]*|\brequire\(|\bimport\()\s*["']([^"']+)["']/gm)];
  return [...new Set(found.map((match) => match[1] ?? ''))].filter((name) => !isBuiltin(name)).sort();
}

test('the desktop host builds into three programs that need nothing but the window and the database driver', async () => {
  const folder = freshFolder();
  await buildDesktop(folder);
  expect(readdirSync(folder).sort()).toEqual(['main.js', 'preload.cjs', 'store-thread.js']);
  const main = readFileSync(join(folder, 'main.js'), 'utf8');
  expect(outsideModules(main)).toEqual(['better-sqlite3', 'electron']);
  const thread = readFileSync(join(folder, 'store-thread.js'), 'utf8');
  expect(outsideModules(thread)).toEqual(['better-sqlite3']);
  const preload = readFileSync(join(folder, 'preload.cjs'), 'utf8');
  expect(outsideModules(preload)).toEqual(['electron']);
  expect(preload).not.toMatch(/^import\b/m);
  expect(preload.length).toBeLessThan(2_000);
}, 60_000);
