import { existsSync, mkdirSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { besideStore, finish } from './whole-file.ts';

/** A whole new store that is about to take the place of the one there. */
export const comingOf = (file: string): string => `${file}.coming`;

/** The folder a store goes to that is not worked with any more; nothing in it is ever removed by us. */
export const asideFolderOf = (file: string, now: string): string =>
  join(dirname(file), 'set-aside', new Date(now).toISOString().replaceAll(':', '.'));

/**
 * Puts the store that waits under its coming name into the place of the one there, which is moved aside whole.
 * Safe to be cut off anywhere: `finishSwap` at the next start ends it. The write-ahead log goes first, for left
 * beside another store it would be played into it.
 */
export function swapStore(file: string, asideFolder: string): void {
  for (const ending of [...besideStore, '']) {
    if (!existsSync(`${file}${ending}`)) continue;
    mkdirSync(asideFolder, { recursive: true });
    renameSync(`${file}${ending}`, join(asideFolder, `undertrim.db${ending}`));
  }
  finish(comingOf(file), file);
}

/** Ends a swap that was cut off by the end of its program; true when there was one. */
export function finishSwap(file: string, now: string): boolean {
  if (!existsSync(comingOf(file))) return false;
  swapStore(file, asideFolderOf(file, now));
  return true;
}
