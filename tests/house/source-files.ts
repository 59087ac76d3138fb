import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

/** A file of ours with its text and what it imports of ours, all paths from the project's root. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
  readonly imports: readonly string[];
}

export const root = join(import.meta.dirname, '../..');

/** Every file git keeps or would keep: what a clean clone of the work at hand holds. */
export function keptFiles(): readonly string[] {
  const listed = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
    cwd: root,
    encoding: 'utf8',
  });
  return [...new Set(listed.split('\n'))].filter((path) => path !== '' && existsSync(join(root, path)));
}

/** `import … from '…'`, `export … from '…'`, bare `import '…'` and `import('…')`. */
const importPattern = /(?:^(?:import|export)\b[^'"`;]*?from\s*|^import\s*|\bimport\(\s*)'([^']+)'/gm;

/** The TypeScript files among them, with their imports of our own files resolved. */
export function sourceFiles(): readonly SourceFile[] {
  return keptFiles()
    .filter((path) => /\.tsx?$/.test(path))
    .map((path) => {
      const text = readFileSync(join(root, path), 'utf8');
      const imports = [...text.matchAll(importPattern)].map(([, target = '']) => resolved(path, target));
      return { path, text, imports: imports.filter((target) => target !== null) };
    });
}

function resolved(from: string, target: string): string | null {
  if (target.startsWith('#')) return target.slice(1);
  if (target.startsWith('.')) return normalize(join(dirname(from), target));
  return null;
}

/** Names of packages (not files) a file imports. */
export function packagesIn(file: SourceFile): readonly string[] {
  return [...file.text.matchAll(importPattern)]
    .map(([, target = '']) => target)
    .filter((target) => !target.startsWith('.') && !target.startsWith('#'));
}

/** The room a file lives in: its top folder, or two levels for core. */
export function roomOf(path: string): string {
  const parts = path.split('/');
  if (parts[0] === 'core' && parts.length > 2) return `core/${parts[1]}`;
  if (path.startsWith('electron/contract/')) return 'electron/contract';
  return parts[0] ?? '';
}
