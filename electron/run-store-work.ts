import { Worker } from 'node:worker_threads';
import type { Result } from '#core/quantity/result.ts';
import { doStoreWork, type StoreWork } from '#db/backup/store-work.ts';
import { type StoreThreadData, type StoreThreadSays, sharedFlags } from './store-thread-data.ts';

/** A piece of work going on. */
export interface RunningWork {
  /** Rejects when the work threw or was told to stop. */
  readonly done: Promise<Result<null>>;
  /** Ends it and returns when it has let go of the store, so that the store can be closed whole. */
  stop(): void;
}

/** The longest a stop waits for a thread that is in the middle of reading. */
const stopPatienceMs = 3_000;
const ownName = import.meta.url.endsWith('.ts') ? './store-thread.ts' : './store-thread.js';

/** Does a piece of work in a thread of its own; in this one, in small steps, where no thread can be had. */
export function runStoreWork(work: StoreWork, onShare: (share: number) => void): RunningWork {
  const flags = new Int32Array(new SharedArrayBuffer(8));
  const stop = (): void => {
    Atomics.store(flags, sharedFlags.stop, 1);
    if (Atomics.load(flags, sharedFlags.storeOpen) === 1) {
      Atomics.wait(flags, sharedFlags.storeOpen, 1, stopPatienceMs);
    }
  };
  return { done: inThread(work, flags, onShare), stop };
}

function inThread(
  work: StoreWork,
  flags: Int32Array,
  onShare: (share: number) => void,
): Promise<Result<null>> {
  const data: StoreThreadData = { work, flags };
  return new Promise((resolve, reject) => {
    let begun = false;
    const thread = new Worker(new URL(ownName, import.meta.url), { workerData: data, execArgv: [] });
    thread.on('online', () => {
      begun = true;
    });
    thread.on('message', (said: StoreThreadSays) => {
      if ('done' in said) resolve(said.done);
      else onShare(said.share);
    });
    thread.on('error', (error) => {
      if (begun) reject(error);
      else resolve(here(work, flags, onShare));
    });
    thread.on('exit', () => {
      Atomics.store(flags, sharedFlags.storeOpen, 0);
      reject(new Error('the thread ended by itself'));
    });
  });
}

function here(work: StoreWork, flags: Int32Array, onShare: (share: number) => void): Promise<Result<null>> {
  // A stop of this very thread finds it between two steps, when there is nothing to wait for.
  return doStoreWork(work, {
    onShare: (share) => {
      if (Atomics.load(flags, sharedFlags.stop) === 1) throw new Error('told to stop');
      onShare(share);
    },
    onStoreClosed: () => undefined,
  });
}
