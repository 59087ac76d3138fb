import { join } from 'node:path';
import { buildDesktop } from './build-desktop.ts';
import { buildPage } from './build-page.ts';
import { isStale } from './is-stale.ts';
import { pageFolder, projectFolder } from './project-folder.ts';

const inProject = (...names: string[]): string[] => names.map((name) => join(projectFolder, name));

/** Builds the page when its sources are newer than what is built. */
export async function ensurePage(): Promise<void> {
  const sources = inProject('core', 'electron/contract', 'renderer', 'package.json');
  if (isStale(join(pageFolder, 'index.html'), sources)) await buildPage();
}

/** Builds the desktop host when its sources are newer than what is built. */
export async function ensureDesktop(): Promise<void> {
  const built = join(projectFolder, 'electron/built/desktop/main.js');
  if (isStale(built, inProject('core', 'db', 'electron', 'package.json'))) await buildDesktop();
}
