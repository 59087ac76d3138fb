import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Whether a built file is missing or older than anything in the folders and files it is made from. */
export function isStale(builtFile: string, sources: readonly string[]): boolean {
  if (!existsSync(builtFile)) return true;
  const builtAt = statSync(builtFile).mtimeMs;
  return sources.some((source) => newestMs(source) > builtAt);
}

function newestMs(path: string): number {
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  const inside = readdirSync(path, { withFileTypes: true }).filter((entry) => entry.name !== 'built');
  return Math.max(0, ...inside.map((entry) => newestMs(join(path, entry.name))));
}
