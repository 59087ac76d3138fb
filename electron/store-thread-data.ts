import type { Result } from '#core/quantity/result.ts';
import type { StoreWork } from '#db/backup/store-work.ts';

/** Places in what both threads see: whether to stop, and whether the other one has the store open. */
export const sharedFlags = { stop: 0, storeOpen: 1 } as const;

/** What the thread is started with, and what it says. */
export interface StoreThreadData {
  readonly work: StoreWork;
  readonly flags: Int32Array;
}
export type StoreThreadSays = { readonly share: number } | { readonly done: Result<null> };
