import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Salvaged } from './salvage-store.ts';

/** What was saved from a damaged store and what was not. */
export interface Loss extends Salvaged {
  readonly at: string;
  /** Where the damaged file is kept, whole. */
  readonly asideFolder: string;
  /** When the backup was made that filled gaps; null when there was none. */
  readonly backupAt: string | null;
}

// Beside the store and not in it, so that it is told whichever store comes into use.
const lossFile = (storeFile: string): string => join(dirname(storeFile), 'not-read-yet.loss.json');

/** Keeps what was lost until the user has read it. */
export function keepLoss(storeFile: string, loss: Loss): void {
  writeFileSync(lossFile(storeFile), JSON.stringify(loss));
}

/** What was lost and not read yet; null when there is nothing to tell. */
export function readLoss(storeFile: string): Loss | null {
  try {
    return JSON.parse(readFileSync(lossFile(storeFile), 'utf8')) as Loss;
  } catch {
    return null;
  }
}

/** The user has read it. The same is kept for good beside the damaged file. */
export function forgetLoss(storeFile: string): void {
  rmSync(lossFile(storeFile), { force: true });
}
