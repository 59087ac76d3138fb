import { parentPort, workerData } from 'node:worker_threads';
import { doStoreWork } from '#db/backup/store-work.ts';
import { type StoreThreadData, type StoreThreadSays, sharedFlags } from './store-thread-data.ts';

// The program of the thread that copies the store, so that the host goes on answering meanwhile.
const { work, flags } = workerData as StoreThreadData;
const say = (message: StoreThreadSays): void => parentPort?.postMessage(message);

const letGo = (): void => {
  Atomics.store(flags, sharedFlags.storeOpen, 0);
  Atomics.notify(flags, sharedFlags.storeOpen);
};
const goOn = (): void => {
  if (Atomics.load(flags, sharedFlags.stop) === 0) return;
  letGo();
  throw new Error('told to stop');
};

// Said before it is looked whether to stop, so that one of the two threads always sees the other.
Atomics.store(flags, sharedFlags.storeOpen, 1);
goOn();
const done = await doStoreWork(work, {
  onShare: (share) => {
    if (Atomics.load(flags, sharedFlags.stop) === 1) throw new Error('told to stop');
    say({ share });
  },
  onStoreClosed: letGo,
});
say({ done });
