import { join } from 'node:path';
import { build } from 'vite';
import { projectFolder } from './project-folder.ts';

/** Builds the page into renderer/built, as renderer/vite.config.ts says. */
export async function buildPage(): Promise<void> {
  const root = join(projectFolder, 'renderer');
  await build({ root, configFile: join(root, 'vite.config.ts'), logLevel: 'warn' });
}
