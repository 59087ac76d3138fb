import type { HostProblem } from '#core/quantity/problem.ts';

/**
 * What an SQLite error says about the surroundings: a full disk, a folder that may not be written, a
 * file in use, a damaged file. Null for every other error, which is then our own bug.
 * Result codes: sqlite.org/rescode.html; the driver reports them by name, extended ones with a suffix.
 */
export function storeProblem(error: unknown): HostProblem | null {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return null;
  const code = error.code;
  const is = (name: string): boolean => code === name || code.startsWith(`${name}_`);
  if (is('SQLITE_FULL') || code === 'ENOSPC') return { code: 'store-full' };
  if (is('SQLITE_READONLY') || code === 'EACCES' || code === 'EPERM' || code === 'EROFS') {
    return { code: 'store-read-only' };
  }
  if (is('SQLITE_BUSY') || is('SQLITE_LOCKED')) return { code: 'store-busy' };
  if (is('SQLITE_CANTOPEN')) return { code: 'store-read-only' };
  if (is('SQLITE_CORRUPT') || is('SQLITE_NOTADB') || is('SQLITE_IOERR')) {
    return { code: 'store-damaged', detail: code };
  }
  return null;
}
