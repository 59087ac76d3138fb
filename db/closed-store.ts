import { existsSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import type { Connection } from './connection.ts';

/** What a store's file was like when it was closed whole: its length, and when it was last written to. */
interface ClosedNote {
  readonly bytes: number;
  readonly writtenAtMs: number;
}

const noteOf = (file: string): string => `${file}.closed`;

/** Closes a store and notes what its file is like, so that the next start need not look through all of it. */
export function closeStore(connection: Connection, file: string): void {
  connection.close();
  noteClosed(file);
}

/** Notes what the file of a closed store is like; nothing where changes still lie beside it. */
export function noteClosed(file: string): void {
  try {
    if (!existsSync(`${file}-wal`)) writeFileSync(noteOf(file), JSON.stringify(stateOf(file)));
  } catch {
    // Without the note the next start looks through the whole file, which is slower and nothing worse.
  }
}

/**
 * Whether a store's file is just as it was when it was closed. The answer is given once: the note goes, so that
 * a program that is cut off leaves none.
 */
export function isAsClosed(file: string): boolean {
  try {
    const noted = JSON.parse(readFileSync(noteOf(file), 'utf8')) as ClosedNote;
    rmSync(noteOf(file));
    const found = stateOf(file);
    return (
      !existsSync(`${file}-wal`) && noted.bytes === found.bytes && noted.writtenAtMs === found.writtenAtMs
    );
  } catch {
    return false;
  }
}

function stateOf(file: string): ClosedNote {
  const { size, mtimeMs } = statSync(file);
  return { bytes: size, writtenAtMs: Math.floor(mtimeMs) };
}
