import { closeSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';

/** A file that is not whole yet goes by this name until it is. */
export const partOf = (file: string): string => `${file}.part`;

/** What SQLite keeps beside a database. */
export const besideStore = ['-wal', '-shm', '-journal'] as const;

/** Removes a database that was never finished, with what SQLite kept beside it. */
export function dropPart(part: string): void {
  for (const ending of ['', ...besideStore]) rmSync(`${part}${ending}`, { force: true });
}

/** Gives a finished file its name, in one step, after its bytes are on the disk. */
export function finish(part: string, file: string): void {
  settle(part);
  renameSync(part, file);
  // A folder cannot be opened for this on Windows, which writes names through by itself.
  if (process.platform !== 'win32') settle(dirname(file));
}

/** Returns when the bytes of a file are on the disk. */
export function settle(path: string): void {
  const handle = openSync(path, process.platform === 'win32' ? 'r+' : 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
