import { join } from 'node:path';
import { build, type InlineConfig } from 'vite';
import { projectFolder } from './project-folder.ts';

/**
 * Builds the desktop host's two programs into electron/built/desktop: the main one, with the native
 * database driver left outside, and the preload, as the one plain file a sandboxed window can load.
 */
export async function buildDesktop(
  outDir: string = join(projectFolder, 'electron/built/desktop'),
): Promise<void> {
  await build(programConfig('main.ts', 'main.js', 'es', outDir));
  await build(programConfig('preload.ts', 'preload.cjs', 'cjs', outDir));
}

function programConfig(entry: string, file: string, format: 'es' | 'cjs', outDir: string): InlineConfig {
  return {
    root: projectFolder,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    ssr: { noExternal: true, external: ['electron', 'better-sqlite3'] },
    build: {
      ssr: join(projectFolder, 'electron/desktop', entry),
      outDir,
      emptyOutDir: false,
      target: 'node24',
      rolldownOptions: { output: { format, entryFileNames: file, codeSplitting: false } },
    },
  };
}
