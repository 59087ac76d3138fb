import { join } from 'node:path';
import { build, type InlineConfig } from 'vite';
import { projectFolder } from './project-folder.ts';

/**
 * Builds the desktop host's three programs into electron/built/desktop: the main one and that of the thread
 * which copies the store, with the native database driver left outside, and the preload, as the one plain file
 * a sandboxed window can load.
 */
export async function buildDesktop(
  outDir: string = join(projectFolder, 'electron/built/desktop'),
): Promise<void> {
  await build(programConfig('desktop/main.ts', 'main.js', 'es', outDir));
  await build(programConfig('store-thread.ts', 'store-thread.js', 'es', outDir));
  await build(programConfig('desktop/preload.ts', 'preload.cjs', 'cjs', outDir));
}

function programConfig(entry: string, file: string, format: 'es' | 'cjs', outDir: string): InlineConfig {
  return {
    root: projectFolder,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    ssr: { noExternal: true, external: ['electron', 'better-sqlite3'] },
    build: {
      ssr: join(projectFolder, 'electron', entry),
      outDir,
      emptyOutDir: false,
      target: 'node24',
      rolldownOptions: { output: { format, entryFileNames: file, codeSplitting: false } },
    },
  };
}
